using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What a recall would take in.</summary>
/// <param name="Codes">Where it would begin: an accession, a lot, or packets.</param>
/// <param name="Name">What the first of them goes by.</param>
/// <param name="Packets">Every packet downstream.</param>
/// <param name="Reach">Lots, growings and other libraries downstream.</param>
public sealed record RecallPreview(IReadOnlyList<string> Codes, GoesBy Name, IReadOnlyList<RecalledPacket> Packets, RecallReach Reach)
{
    /// <summary>The first code.</summary>
    public string Code => Codes[0];

    /// <summary>People who have or had one of them.</summary>
    public int Holders => Packets.Select(packet => packet.Who).OfType<string>().Distinct().Count();

    /// <summary>Packets of it that an open recall takes in already.</summary>
    public int RecalledAlready { get; init; }
}

/// <summary>Shows the list of a recall before it is started.</summary>
public sealed class PreviewRecall(IDbContextFactory<LibraryDbContext> factory)
{
    /// <param name="actor">A librarian.</param>
    /// <param name="codes">One code, or several with commas: the packets of one packing, say.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<RecallPreview>> ReadAsync(Actor actor, string? codes, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var starts = new List<NodeByCode>();
        foreach (var code in RecallSeed.Codes(codes))
        {
            if (!(await NodeByCode.FindAsync(db, code, stop)).TryGet(out var start, out var no)) return no;
            if (!starts.Contains(start)) starts.Add(start);
        }

        var packets = await LineageSql.PacketsBelowAny(db, [.. starts.Select(start => start.Node)]).AsNoTracking().Where(packet => packet.Standing != PacketStanding.Void).ToListAsync(stop);
        var people = await PersonNames.OfAsync(db, packets.Select(packet => packet.HolderId), stop);
        var names = await LineageNames.OfAsync(db, [starts[0].Node], stop);
        var ids = packets.Select(packet => packet.Id).ToArray();
        var recalled = await ListedPacket.Open(db).Where(listed => ids.Contains(listed.PacketId)).Select(listed => listed.PacketId).Distinct().CountAsync(stop);
        return new RecallPreview([.. starts.Select(start => start.Code)], names[starts[0].Node], [.. packets
            .OrderByDescending(packet => packet.Standing == PacketStanding.Lent).ThenByDescending(packet => packet.HolderId is not null).ThenBy(packet => packet.Code, StringComparer.Ordinal)
            .Select(packet => new RecalledPacket(packet.Code, packet.Standing, packet.HolderId is { } holder ? people.GetValueOrDefault(holder) : null, null, null, null, packet.HolderId))],
            await RecallReach.OfAsync(db, [.. starts.Select(start => start.Node)], stop)) { RecalledAlready = recalled };
    }
}
