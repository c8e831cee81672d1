using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A recall that was started.</summary>
/// <param name="Hold">Its number; lifting this hold closes it.</param>
/// <param name="Packets">Packets on its list.</param>
/// <param name="Holders">People who have or had one of them.</param>
public sealed record RecallStarted(HoldId Hold, int Packets, int Holders);

/// <summary>Calls back every packet downstream of an accession, a lot or a packet, and holds what is on the shelf.</summary>
public sealed class RecallSeed(SeedLedger ledger)
{
    public Task<Outcome<RecallStarted>> RunAsync(Actor actor, string? code, string? why, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => RecallAsync(work, code, why), stop)
            : Task.FromResult<Outcome<RecallStarted>>(PeopleRefusals.LibrariansOnly);

    private static async Task<Outcome<RecallStarted>> RecallAsync(SeedWork work, string? code, string? why)
    {
        if (!(await work.StockAsync(code)).TryGet(out var seed, out var noSeed)) return noSeed;
        var holds = await work.HoldsAboveAsync(seed.Node);
        var packets = await LineageSql.PacketsBelow(work.Db, seed.Node.Value).AsNoTracking()
            .Where(packet => packet.Standing != PacketStanding.Void).OrderBy(packet => packet.Id).Select(packet => new { packet.Id, packet.HolderId }).ToListAsync(work.Stop);

        var list = packets.Select(packet => new PacketId(packet.Id)).ToArray();
        var decided = HoldRules.Recall(work.Ids.Next<HoldId>(), seed.Node, seed.Began, holds, why, list, work.Today, work.Today);
        if (!decided.TryGet(out var recalled, out var no)) return no;

        work.Append(recalled);
        foreach (var packet in packets.Where(packet => packet.HolderId is not null))
        {
            work.Db.Add(new RecallAnswerRow { HoldId = recalled.Hold.Value, PacketId = packet.Id, PersonId = packet.HolderId!.Value });
        }
        return new RecallStarted(recalled.Hold, list.Length, packets.Select(packet => packet.HolderId).OfType<Guid>().Distinct().Count());
    }
}
