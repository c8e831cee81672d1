using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What a recall would take in.</summary>
/// <param name="Code">Where it would begin: an accession, a lot or a packet.</param>
/// <param name="Name">What that goes by.</param>
/// <param name="Packets">Every packet downstream.</param>
public sealed record RecallPreview(string Code, GoesBy Name, IReadOnlyList<RecalledPacket> Packets)
{
    /// <summary>People who have or had one of them.</summary>
    public int Holders => Packets.Select(packet => packet.Who).OfType<string>().Distinct().Count();
}

/// <summary>Shows the list of a recall before it is started.</summary>
public sealed class PreviewRecall(IDbContextFactory<LibraryDbContext> factory)
{
    public async Task<Outcome<RecallPreview>> ReadAsync(Actor actor, string? code, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await FindAsync(db, code, stop)).TryGet(out var start, out var no)) return no;
        var packets = await LineageSql.PacketsBelow(db, start.Node).AsNoTracking().Where(packet => packet.Standing != PacketStanding.Void)
            .OrderBy(packet => packet.Code).Select(packet => new { packet.Code, packet.Standing, packet.HolderId }).ToListAsync(stop);
        var people = await PersonNames.OfAsync(db, packets.Select(packet => packet.HolderId), stop);
        var names = await LineageNames.OfAsync(db, [start.Node], stop);
        return new RecallPreview(start.Code, names[start.Node], [.. packets
            .OrderByDescending(packet => packet.Standing == PacketStanding.Lent).ThenByDescending(packet => packet.HolderId is not null)
            .Select(packet => new RecalledPacket(packet.Code, packet.Standing, packet.HolderId is { } holder ? people.GetValueOrDefault(holder) : null, null, null))]);
    }

    private static async Task<Outcome<Start>> FindAsync(LibraryDbContext db, string? code, CancellationToken stop)
    {
        if (LotCode.TryParse(code, out var lot, out var noLot)) return await LotAsync(db, lot.ToString(), stop);
        if (AccessionCode.TryParse(code, out var accession, out _)) return await AccessionAsync(db, accession.ToString(), stop);
        if (PacketCode.TryParse(code, out var packet, out var noPacket)) return await PacketAsync(db, packet.ToString(), stop);
        return (code ?? "").TrimStart().StartsWith("L", StringComparison.OrdinalIgnoreCase) ? noLot : noPacket;
    }

    private static async Task<Outcome<Start>> LotAsync(LibraryDbContext db, string code, CancellationToken stop)
    {
        var id = await db.Set<LotRow>().Where(row => row.Code == code && !row.IsVoid).Select(row => row.Id).SingleOrDefaultAsync(stop);
        return id == 0 ? FindingRefusals.NoLot(code) : new Start(id, code);
    }

    private static async Task<Outcome<Start>> AccessionAsync(LibraryDbContext db, string code, CancellationToken stop)
    {
        var id = await db.Set<AccessionRow>().Where(row => row.Code == code && !row.IsVoid).Select(row => row.Id).SingleOrDefaultAsync(stop);
        return id == 0 ? FindingRefusals.NoAccession(code) : new Start(id, code);
    }

    private static async Task<Outcome<Start>> PacketAsync(LibraryDbContext db, string code, CancellationToken stop)
    {
        var id = await db.Set<PacketRow>().Where(row => row.Code == code && row.Standing != PacketStanding.Void).Select(row => row.Id).SingleOrDefaultAsync(stop);
        return id == 0 ? FindingRefusals.NoPacket(code) : new Start(id, code);
    }

    private sealed record Start(long Node, string Code);
}
