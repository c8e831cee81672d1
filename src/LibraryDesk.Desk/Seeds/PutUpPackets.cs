using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>The codes of packets just put up, in order.</summary>
public sealed record PacketsPutUp(IReadOnlyList<PacketCode> Codes);

/// <summary>Puts up packets from a lot, each with a code of its own.</summary>
public sealed class PutUpPackets(SeedLedger ledger)
{
    public const string CountCode = "packing.count";

    /// <param name="actor">A librarian.</param>
    /// <param name="lotCode">The lot.</param>
    /// <param name="count">How many packets.</param>
    /// <param name="each">How much goes into each.</param>
    /// <param name="packedOn">The day; null for today.</param>
    /// <param name="place">Where they are kept; null when not said.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<PacketsPutUp>> RunAsync(Actor actor, string? lotCode, int count, Quantity each, DateOnly? packedOn, string? place, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => PutUpAsync(work, lotCode, count, each, packedOn, place), stop)
            : Task.FromResult<Outcome<PacketsPutUp>>(PeopleRefusals.LibrariansOnly);

    /// <summary>Puts packets up within an act that is at work.</summary>
    internal static async Task<Outcome<PacketsPutUp>> PutUpAsync(SeedWork work, string? lotCode, int count, Quantity each, DateOnly? packedOn, string? place)
    {
        if (count is < 1 or > PackingRules.MostPackets) return new Refusal(CountCode, $"Put up between 1 and {PackingRules.MostPackets} packets in one go.");
        if (!(await work.LotAsync(lotCode)).TryGet(out var lot, out var noLot)) return noLot;
        var holds = await work.HoldsAboveAsync(lot.Id.Node);
        var letter = CodeLetter((await work.SettingsAsync()).CodePrefix);
        var on = packedOn ?? work.Today;

        var packets = new List<NewPacket>();
        for (var number = 0; number < count; number++)
        {
            packets.Add(new(work.Ids.Next<PacketId>(), await work.NextPacketCodeAsync(letter, work.CodeYear(on)), each));
        }
        if (!PackingRules.PutUp(lot, holds, packets, on, place, work.Today).TryGet(out var packeted, out var no)) return no;

        work.Append(packeted);
        return new PacketsPutUp([.. packeted.Packets.Select(packet => packet.Code)]);
    }

    // A prefix whose first letter codes do not use (I, L, O) falls back to Q.
    private static char CodeLetter(string prefix) =>
        prefix.Length > 0 && CheckCharacter.Letters.Contains(char.ToUpperInvariant(prefix[0]), StringComparison.Ordinal) ? char.ToUpperInvariant(prefix[0]) : 'Q';
}
