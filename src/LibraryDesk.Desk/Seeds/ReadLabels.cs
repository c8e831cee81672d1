using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What a label says of a packet or of a lot's own bag.</summary>
/// <param name="Code">The packet or lot code.</param>
/// <param name="IsLot">True for the label of a lot.</param>
/// <param name="LotCode">The lot.</param>
/// <param name="Name">What it goes by.</param>
/// <param name="IsHybrid">True where the library's record of the variety says F1 hybrid.</param>
/// <param name="Seed">How much is in it.</param>
/// <param name="PackedOn">The day the packet was put up, or the lot made.</param>
/// <param name="Grown">How and when the seed was grown.</param>
/// <param name="Tested">The last germination test of the lot; null without one.</param>
/// <param name="Holds">What stands against lending it, upstream too.</param>
public sealed record SeedLabel(
    string Code, bool IsLot, string LotCode, GoesBy Name, bool IsHybrid, Quantity Seed, DateOnly PackedOn, SeedGrown Grown, GerminationTest? Tested, IReadOnlyList<HoldReason> Holds)
{
    /// <summary>True when the name must not go on a label: it is in doubt, or the seed is called back.</summary>
    public bool IsNameInDoubt => Holds.Any(reason => reason is HoldReason.NameInDoubt or HoldReason.Recall);
}

/// <summary>Labels as read.</summary>
/// <param name="Labels">The labels, in the order asked for.</param>
/// <param name="Missing">Codes that lead nowhere.</param>
public sealed record SeedLabels(IReadOnlyList<SeedLabel> Labels, IReadOnlyList<string> Missing);

/// <summary>Reads what labels need, for people who run the desk.</summary>
public sealed class ReadLabels(IDbContextFactory<LibraryDbContext> factory, LibraryClock clock)
{
    /// <summary>The most labels of one print.</summary>
    public const int Most = 400;

    /// <summary>Packets of a lot that are on the shelf.</summary>
    public async Task<Outcome<SeedLabels>> OfLotAsync(Actor actor, string? lotCode, CancellationToken stop)
    {
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        if (!LotCode.TryParse(lotCode, out var read, out var no)) return no;
        var text = read.ToString();
        await using var db = await factory.CreateDbContextAsync(stop);
        var lot = await db.Set<LotRow>().Where(row => row.Code == text && !row.IsVoid).Select(row => row.Id).SingleOrDefaultAsync(stop);
        if (lot == 0) return FindingRefusals.NoLot(text);
        return new SeedLabels(await PacketLabelsAsync(db, OnShelf(db).Where(packet => packet.LotId == lot), stop), []);
    }

    /// <summary>Packets put up today.</summary>
    public async Task<Outcome<SeedLabels>> OfTodayAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        var today = clock.Today;
        await using var db = await factory.CreateDbContextAsync(stop);
        return new SeedLabels(await PacketLabelsAsync(db, OnShelf(db).Where(packet => packet.PackedOn == today), stop), []);
    }

    /// <summary>Packets and lots by code, each once, in the order given.</summary>
    public async Task<Outcome<SeedLabels>> ByCodeAsync(Actor actor, IEnumerable<string> codes, CancellationToken stop)
    {
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        var wanted = codes.Select(Plain).Distinct().Take(Most).ToArray();
        await using var db = await factory.CreateDbContextAsync(stop);
        var packets = await PacketLabelsAsync(db, db.Set<PacketRow>().Where(packet => wanted.Contains(packet.Code) && packet.Standing != PacketStanding.Void), stop);
        var lots = await LotLabelsAsync(db, db.Set<LotRow>().Where(lot => wanted.Contains(lot.Code) && !lot.IsVoid), stop);
        var found = packets.Concat(lots).ToDictionary(label => label.Code);
        return new SeedLabels([.. wanted.Where(found.ContainsKey).Select(code => found[code])], [.. wanted.Where(code => !found.ContainsKey(code))]);
    }

    // As printed, where it can be read as a code; else as typed, so that it can be shown among the missing.
    private static string Plain(string typed) =>
        PacketCode.TryParse(typed, out var packet, out _) ? packet.ToString() : LotCode.TryParse(typed, out var lot, out _) ? lot.ToString() : typed.Trim();

    private static IQueryable<PacketRow> OnShelf(LibraryDbContext db) =>
        db.Set<PacketRow>().Where(packet => packet.Standing == PacketStanding.OnShelf || packet.Standing == PacketStanding.Picked);

    private static async Task<IReadOnlyList<SeedLabel>> PacketLabelsAsync(LibraryDbContext db, IQueryable<PacketRow> packets, CancellationToken stop)
    {
        var rows = await packets.AsNoTracking().OrderBy(packet => packet.Id).Take(Most).ToListAsync(stop);
        var facts = await LotFacts.ReadAsync(db, [.. rows.Select(packet => packet.LotId).Distinct()], [.. rows.Select(packet => packet.Id)], stop);
        return [.. rows.Select(packet => facts.Label(packet.LotId, packet.Id, packet.Code, new(packet.Held, packet.Unit), packet.PackedOn))];
    }

    private static async Task<IReadOnlyList<SeedLabel>> LotLabelsAsync(LibraryDbContext db, IQueryable<LotRow> lots, CancellationToken stop)
    {
        var rows = await lots.AsNoTracking().OrderBy(lot => lot.Id).Take(Most).ToListAsync(stop);
        var facts = await LotFacts.ReadAsync(db, [.. rows.Select(lot => lot.Id)], [], stop);
        return [.. rows.Select(lot => facts.Label(lot.Id, null, lot.Code, new(lot.Stock, lot.Unit), lot.MadeOn))];
    }
}
