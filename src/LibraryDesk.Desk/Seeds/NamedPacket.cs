using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Words;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A packet with the name of its seed, as letters call it.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Variety">What its lot goes by; null without a name.</param>
internal sealed record NamedPacket(string Code, string? Variety)
{
    /// <summary>The code, and the name in quotes where there is one.</summary>
    public string Title => Variety is null ? Code : $"{Code} {Quotes.Of(Variety)}";

    public static async Task<IReadOnlyDictionary<long, NamedPacket>> OfAsync(LibraryDbContext db, IReadOnlyCollection<long> ids, CancellationToken stop)
    {
        var packets = await db.Set<PacketRow>().Where(packet => ids.Contains(packet.Id)).Select(packet => new { packet.Id, packet.Code, packet.LotId }).ToListAsync(stop);
        var names = await LineageNames.OfAsync(db, [.. packets.Select(packet => packet.LotId).Distinct()], stop);
        return packets.ToDictionary(packet => packet.Id, packet => new NamedPacket(packet.Code, names[packet.LotId].Variety));
    }
}
