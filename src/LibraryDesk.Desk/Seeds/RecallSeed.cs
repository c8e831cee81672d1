using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A recall that was started.</summary>
/// <param name="Holds">Its numbers, one for each code it began at; lifting such a hold closes that part.</param>
/// <param name="Packets">Packets on its list.</param>
/// <param name="Holders">People who have or had one of them.</param>
public sealed record RecallStarted(IReadOnlyList<HoldId> Holds, int Packets, int Holders)
{
    /// <summary>The first number, and for a recall from one code the only one.</summary>
    public HoldId Hold => Holds[0];
}

/// <summary>Calls back every packet downstream of an accession, a lot or packets, and holds what is on the shelf.</summary>
public sealed class RecallSeed(SeedLedger ledger)
{
    /// <param name="actor">A librarian.</param>
    /// <param name="codes">One code, or several with commas; all are recalled, or none.</param>
    /// <param name="why">In words, without anything about a person.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<RecallStarted>> RunAsync(Actor actor, string? codes, string? why, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => RecallAsync(work, codes, why), stop)
            : Task.FromResult<Outcome<RecallStarted>>(PeopleRefusals.LibrariansOnly);

    /// <summary>Codes as typed with commas, each once; a single empty one where nothing was typed, so that it is refused as such.</summary>
    internal static IReadOnlyList<string> Codes(string? typed)
    {
        var codes = (typed ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        return codes.Length == 0 ? [""] : codes;
    }

    private static async Task<Outcome<RecallStarted>> RecallAsync(SeedWork work, string? codes, string? why)
    {
        var holds = new List<HoldId>();
        var nodes = new HashSet<NodeId>();
        var packets = new HashSet<long>();
        var people = new HashSet<Guid>();
        foreach (var code in Codes(codes))
        {
            if (!(await work.StockAsync(code)).TryGet(out var seed, out var noSeed)) return noSeed;
            // Typed twice in two ways, or on the list of an earlier code already.
            if (!nodes.Add(seed.Node) || packets.Contains(seed.Node.Value)) continue;
            var above = await work.HoldsAboveAsync(seed.Node);
            var below = await LineageSql.PacketsBelow(work.Db, seed.Node.Value).AsNoTracking()
                .Where(packet => packet.Standing != PacketStanding.Void).OrderBy(packet => packet.Id).Select(packet => new { packet.Id, packet.HolderId }).ToListAsync(work.Stop);

            var list = below.Select(packet => new PacketId(packet.Id)).ToArray();
            if (!HoldRules.Recall(work.Ids.Next<HoldId>(), seed.Node, seed.Began, above, why, list, work.Today, work.Today, seed.IsVoid).TryGet(out var recalled, out var no)) return no;

            work.Append(recalled);
            holds.Add(recalled.Hold);
            packets.UnionWith(below.Select(packet => packet.Id));
            var held = below.Where(packet => packet.HolderId is not null).Select(packet => (packet.Id, packet.HolderId!.Value)).ToArray();
            people.UnionWith(held.Select(packet => packet.Value));
            await RecallAnswers.BeginAsync(work.Db, recalled.Hold.Value, held, work.Stop);
        }

        return new RecallStarted(holds, packets.Count, people.Count);
    }
}
