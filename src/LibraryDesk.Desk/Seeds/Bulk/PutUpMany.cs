using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Bulk;

/// <summary>Packets to put up from one lot.</summary>
/// <param name="LotCode">The lot.</param>
/// <param name="Count">How many packets.</param>
/// <param name="Each">How much goes into each.</param>
public sealed record PackingLine(string? LotCode, int Count, Quantity Each);

/// <summary>Puts up packets of several lots in one go: all of them, or none.</summary>
public sealed class PutUpMany(SeedLedger ledger)
{
    public const string EmptyCode = "packing.empty";
    public const string TwiceCode = "packing.twice";

    /// <summary>The most lots of one go.</summary>
    public const int Most = 50;

    public Task<Outcome<PacketsPutUp>> RunAsync(Actor actor, IReadOnlyList<PackingLine> lines, string? place, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(lines);
        if (!actor.IsLibrarian) return Task.FromResult<Outcome<PacketsPutUp>>(PeopleRefusals.LibrariansOnly);
        if (lines.Count is 0 or > Most) return Task.FromResult<Outcome<PacketsPutUp>>(new Refusal(EmptyCode, $"Name the lots to put up, one a line, at most {Most}."));
        return ledger.RecordAsync(actor, work => PutUpAsync(work, lines, place), stop);
    }

    private static async Task<Outcome<PacketsPutUp>> PutUpAsync(SeedWork work, IReadOnlyList<PackingLine> lines, string? place)
    {
        var codes = new List<PacketCode>();
        var seen = new HashSet<LotId>();
        foreach (var line in lines)
        {
            if ((await work.LotAsync(line.LotCode)).TryGet(out var lot, out _) && !seen.Add(lot.Id)) return Nothing(line, new Refusal(TwiceCode, "it stands there twice. Put its packets into one line."));
            if (!(await PutUpPackets.PutUpAsync(work, line.LotCode, line.Count, line.Each, null, place)).TryGet(out var put, out var no)) return Nothing(line, no);
            codes.AddRange(put.Codes);
        }

        return new PacketsPutUp(codes);
    }

    private static Refusal Nothing(PackingLine line, Refusal no) => new(no.Code, $"Lot {line.LotCode}: {no.Words} Nothing was put up.");
}
