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
        Assert.Equal(history.Booked, SeedBook.There(history.State));
    }

    [Property(MaxTest = 15)]
    public void The_lineage_has_no_circles_and_shares_sum_to_1(int seed) => NoCircles(new RandomHistory(seed, 250).State);

    [Property(MaxTest = 15)]
    public void A_rebuild_from_the_ledger_gives_the_same_state(int seed)
    {
        var history = new RandomHistory(seed, 250);
        Assert.Equal(Print(history.State), Print(RandomHistory.Rebuilt(history.Entries)));
        Assert.True(Chain.Verify(history.Entries, checkpoints: history.Head).IsSound);
    }

    [Property(MaxTest = 4)]
    public void A_history_of_ten_thousand_acts_keeps_every_law(int seed)
    {
        var history = new RandomHistory(seed, 10_000);
        output.WriteLine($"{seed}: {history.Refusals} acts were refused on the way; {history.State.Packets.Count} packets, {history.State.Lots.Count} lots.");
        Assert.Equal(history.Booked, SeedBook.There(history.State));
        Assert.True(Chain.Verify(history.Entries, checkpoints: history.Head).IsSound);
        Assert.Equal(Print(history.State), Print(RandomHistory.Rebuilt(history.Entries)));
        NoCircles(history.State);
        Assert.Equal(Enum.GetValues<EntryKind>().Order(), history.Entries.Select(entry => entry.Kind).Distinct().Order());
    }

    private static void NoCircles(SeedState state)
    {
        Assert.All(state.Edges, edge => Assert.True(edge.Parent.Value < edge.Child.Value));
        var graph = LineageGraph.Of(state);
        Assert.All(graph.Nodes, node => Assert.DoesNotContain(node, graph.Descendants(node.Id)));
        Assert.All(graph.Nodes, node => Assert.Equal(1, graph.Founders(node.Id).Values.Sum(), 1e-9));
        Assert.All(graph.Nodes.Where(node => graph.Above(node.Id).Count > 0), node => Assert.Equal(1, graph.Above(node.Id).Sum(edge => edge.Share), 1e-9));
    }

    private static string Print(SeedState state) => string.Join('\n', state.Accessions.Cast<object>()
        .Concat(state.Lots).Concat(state.Packets).Concat(state.GrowOuts).Concat(state.Loans).Concat(state.Requests).Concat(state.Holds).Concat(state.Claims)
        .Concat(state.Tests.Select(test => (object)(test.Id, test.Lot, test.Sown, test.Germinated, test.IsVoid)))
        .Concat(state.Transfers).Concat(state.Edges)
        .Select(record => record.ToString()).Order(StringComparer.Ordinal));
}
