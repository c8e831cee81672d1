using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What stands on a packet's label.</summary>
/// <param name="Code">The packet code.</param>
/// <param name="LotCode">Its lot.</param>
/// <param name="Name">What it goes by.</param>
/// <param name="Seed">How much is in it.</param>
/// <param name="PackedOn">The day it was put up.</param>
/// <param name="MadeOn">The day its lot was made.</param>
/// <param name="Tested">The last germination test of the lot; null without one.</param>
/// <param name="OnShelf">True while it is on the shelf.</param>
public sealed record PacketLabel(string Code, string LotCode, GoesBy Name, Quantity Seed, DateOnly PackedOn, DateOnly MadeOn, GerminationTest? Tested, bool OnShelf);

/// <summary>Labels as read.</summary>
public sealed record PacketLabels(IReadOnlyList<PacketLabel> Labels);

/// <summary>Reads what labels need: packets of a lot, packets by code, or those put up last.</summary>
public sealed class ReadLabels(IDbContextFactory<LibraryDbContext> factory)
{
    /// <summary>The most labels of one print.</summary>
    public const int Most = 500;

    /// <summary>Packets of a lot that are on the shelf, or those put up last when no lot is given.</summary>
    public async Task<Outcome<PacketLabels>> ToPrintAsync(Actor actor, string? lotCode, CancellationToken stop)
    {
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        var asked = (lotCode ?? "").Trim().ToUpperInvariant();
        await using var db = await factory.CreateDbContextAsync(stop);
        var packets = db.Set<PacketRow>().Where(packet => packet.Standing == PacketStanding.OnShelf || packet.Standing == PacketStanding.Picked);
        packets = asked.Length > 0
            ? packets.Where(packet => db.Set<LotRow>().Any(lot => lot.Id == packet.LotId && lot.Code == asked)).OrderBy(packet => packet.Id).Take(Most)
            : packets.OrderByDescending(packet => packet.Id).Take(60);
        return new PacketLabels(await ReadAsync(db, packets, stop));
    }

    /// <summary>Packets by code, in the order given. Codes that lead nowhere are left out.</summary>
    public async Task<Outcome<PacketLabels>> ByCodeAsync(Actor actor, IReadOnlyCollection<string> codes, CancellationToken stop)
    {
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        var wanted = codes.Take(Most).ToArray();
        await using var db = await factory.CreateDbContextAsync(stop);
        var labels = await ReadAsync(db, db.Set<PacketRow>().Where(packet => wanted.Contains(packet.Code) && packet.Standing != PacketStanding.Void), stop);
        return new PacketLabels([.. labels.OrderBy(label => Array.IndexOf(wanted, label.Code))]);
    }

    private static async Task<List<PacketLabel>> ReadAsync(LibraryDbContext db, IQueryable<PacketRow> packets, CancellationToken stop)
    {
        var rows = await packets.AsNoTracking().ToListAsync(stop);
        var lotIds = rows.Select(packet => packet.LotId).Distinct().ToArray();
        var lots = await db.Set<LotRow>().AsNoTracking().Where(lot => lotIds.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, stop);
        var tests = (await db.Set<GerminationTestRow>().AsNoTracking().Where(test => lotIds.Contains(test.LotId) && !test.IsVoid).ToListAsync(stop))
            .GroupBy(test => test.LotId).ToDictionary(group => group.Key, group => group.OrderBy(test => test.ReadOn).ThenBy(test => test.Id).Last().ToRecord());
        var names = await LineageNames.OfAsync(db, lotIds, stop);
        return
        [
            .. rows.Select(packet => new PacketLabel(
                packet.Code, lots[packet.LotId].Code, names[packet.LotId], new(packet.Held, packet.Unit), packet.PackedOn, lots[packet.LotId].MadeOn,
                tests.GetValueOrDefault(packet.LotId), packet.Standing == PacketStanding.OnShelf)),
        ];
    }
}
