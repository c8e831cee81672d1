using FsCheck.Xunit;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;
using Xunit.Abstractions;

namespace LibraryDesk.Lineage.Tests.Laws;

/// <summary>What holds after any history whatever.</summary>
public class HistoryLaws(ITestOutputHelper output)
{
    [Property(MaxTest = 25)]
    public void Seeds_are_conserved_and_never_below_nothing(int seed)
    {
        var history = new RandomHistory(seed, 250);
        Assert.Equal(history.Booked, RandomHistory.There(history.State));
    }

    [Property(MaxTest = 15)]
    public void The_lineage_has_no_circles_and_shares_sum_to_1(int seed)
    {
        var history = new RandomHistory(seed, 250);
        Assert.All(history.State.Edges, edge => Assert.True(edge.Parent.Value < edge.Child.Value));
        var graph = LineageGraph.Of(history.State);
        Assert.All(graph.Nodes, node => Assert.DoesNotContain(node, graph.Descendants(node.Id)));
        Assert.All(graph.Nodes, node => Assert.Equal(1, graph.Founders(node.Id).Values.Sum(), 1e-9));
        Assert.All(graph.Nodes.Where(node => graph.Above(node.Id).Count > 0), node => Assert.Equal(1, graph.Above(node.Id).Sum(edge => edge.Share), 1e-9));
    }

    [Property(MaxTest = 15)]
    public void A_rebuild_from_the_ledger_gives_the_same_state(int seed)
    {
        var history = new RandomHistory(seed, 250);
        Assert.Equal(Print(history.State), Print(RandomHistory.Rebuilt(history.Entries)));
        Assert.True(Chain.Verify(history.Entries, checkpoints: history.Head).IsSound);
    }

    [Property(MaxTest = 60)]
    public void Any_flipped_bit_of_what_an_entry_says_is_found(int seed)
    {
        var history = new RandomHistory(seed, 30);
        var random = new Random(seed);
        var at = random.Next(history.Entries.Count);
        var entries = history.Entries.ToList();
        entries[at] = Flip(entries[at], random);
        var fault = Chain.Verify(entries, checkpoints: history.Head).Fault;
        Assert.NotNull(fault);
        Assert.InRange(fault.Sequence, at + 1, at + 2);
    }

    [Fact]
    public void A_history_of_ten_thousand_acts_keeps_every_law()
    {
        var history = new RandomHistory(20261125, 10_000);
        output.WriteLine($"{history.Refusals} acts were refused on the way; {history.State.Packets.Count} packets, {history.State.Lots.Count} lots.");
        Assert.Equal(history.Booked, RandomHistory.There(history.State));
        Assert.True(Chain.Verify(history.Entries, checkpoints: history.Head).IsSound);
        Assert.Equal(Print(history.State), Print(RandomHistory.Rebuilt(history.Entries)));
        Assert.True(history.Entries.Select(entry => entry.Kind).Distinct().Count() >= 14);
        Assert.Contains(history.Entries, entry => entry.Kind == EntryKind.Corrected);
    }

    private static LedgerEntry Flip(LedgerEntry entry, Random random)
    {
        var bit = 1 << random.Next(7);
        switch (random.Next(6))
        {
            case 0:
                var place = random.Next(entry.Payload.Length);
                return entry with { Payload = entry.Payload[..place] + (char)(entry.Payload[place] ^ bit) + entry.Payload[(place + 1)..] };
            case 1:
                return entry with { Sequence = entry.Sequence ^ bit };
            case 2:
                return entry with { At = new DateTimeOffset(entry.At.Ticks ^ (1L << random.Next(50)), TimeSpan.Zero) };
            case 3:
                var bytes = entry.Actor.Value.ToByteArray();
                bytes[random.Next(16)] ^= (byte)bit;
                return entry with { Actor = new PersonId(new Guid(bytes)) };
            case 4:
                return entry with { Subjects = entry.Subjects.Select((node, at) => at == 0 ? new NodeId(node.Value ^ bit) : node).ToArray() };
            default:
                var digit = random.Next(EntryHash.Length);
                var hex = entry.Hash.Hex[..digit] + (entry.Hash.Hex[digit] == 'f' ? '0' : 'f') + entry.Hash.Hex[(digit + 1)..];
                return EntryHash.TryParse(hex, out var hash) ? entry with { Hash = hash } : throw new InvalidOperationException(hex);
        }
    }

    private static string Print(SeedState state) => string.Join('\n', state.Accessions.Cast<object>()
        .Concat(state.Lots).Concat(state.Packets).Concat(state.GrowOuts).Concat(state.Loans).Concat(state.Requests).Concat(state.Holds).Concat(state.Claims)
        .Concat(state.Tests.Select(test => (object)(test.Id, test.Lot, test.Sown, test.Germinated, test.IsVoid)))
        .Concat(state.Transfers).Concat(state.Edges)
        .Select(record => record.ToString()).Order(StringComparer.Ordinal));
}
