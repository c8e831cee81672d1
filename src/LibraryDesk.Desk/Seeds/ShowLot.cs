using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Somebody who has, or had last, seed of a lot or of anything made of it.</summary>
/// <param name="PacketCode">The packet; for seed sent on as part of a lot, that lot's code.</param>
/// <param name="PersonId">The person; null for another library.</param>
/// <param name="Who">The person or library.</param>
/// <param name="StillOut">True while the packet is on loan.</param>
public sealed record Holder(string PacketCode, Guid? PersonId, string Who, bool StillOut);

/// <summary>One line of a lot's history.</summary>
/// <param name="Sequence">The ledger entry.</param>
/// <param name="At">When it was written down.</param>
/// <param name="Kind">The kebab text of its kind.</param>
/// <param name="Who">The person; null for readers who do not see people.</param>
/// <param name="Act">What it says; null when the entry is damaged.</param>
public sealed record HistoryLine(long Sequence, DateTimeOffset At, string Kind, string? Who, Lineage.Acts.SeedAct? Act);

/// <summary>A lot with everything known of it. People are there for librarians alone.</summary>
/// <param name="Lot">The lot.</param>
/// <param name="Name">What it goes by.</param>
/// <param name="Lineage">Everything up and down from it.</param>
/// <param name="Names">Names of the lineage's nodes.</param>
/// <param name="Holds">What stands against lending it, upstream too.</param>
/// <param name="Claims">Names claimed for it and for what it came from, oldest first, withdrawn ones too.</param>
/// <param name="Packets">Its own packets.</param>
/// <param name="Tests">Its germination tests, oldest first.</param>
/// <param name="History">What the ledger says of it, newest first.</param>
/// <param name="Holders">Who has seed downstream of it; empty for readers who do not see people.</param>
/// <param name="People">What ids stand for; empty for readers who do not see people.</param>
/// <param name="Plants">Plants tied to packets of the lineage that were determined.</param>
/// <param name="Recalls">Open recalls on it or upstream of it.</param>
public sealed record LotView(
    Lot Lot,
    GoesBy Name,
    SeedState Lineage,
    IReadOnlyDictionary<long, GoesBy> Names,
    IReadOnlyList<Hold> Holds,
    IReadOnlyList<NameClaim> Claims,
    IReadOnlyList<Packet> Packets,
    IReadOnlyList<GerminationTest> Tests,
    IReadOnlyList<HistoryLine> History,
    IReadOnlyList<Holder> Holders,
    IReadOnlyDictionary<Guid, string> People,
    IReadOnlyList<DeterminedPlant> Plants,
    IReadOnlyList<RecallNotice> Recalls)
{
    /// <summary>What the library means by its name; null when nobody wrote it down.</summary>
    public VarietyRow? Variety { get; init; }

    /// <summary>Packets free on the shelf.</summary>
    public int OnShelf => Packets.Count(packet => packet.Standing == PacketStanding.OnShelf);
}

/// <summary>Reads a lot's page. Anybody may follow the chain; people and places are for those who run the desk.</summary>
public sealed class ShowLot(IDbContextFactory<LibraryDbContext> factory)
{
    private const int MostHistory = 200;

    public async Task<Outcome<LotView>> ReadAsync(Actor actor, string? code, CancellationToken stop)
    {
        if (!LotCode.TryParse(code, out var read, out var no)) return no;
        var text = read.ToString();
        await using var db = await factory.CreateDbContextAsync(stop);
        var id = await db.Set<LotRow>().Where(lot => lot.Code == text && !lot.IsVoid).Select(lot => lot.Id).SingleOrDefaultAsync(stop);
        if (id == 0) return await db.Set<LotRow>().AnyAsync(lot => lot.Code == text, stop) ? FindingRefusals.UndoneLot(text) : FindingRefusals.NoLot(text);

        var whole = await LineageSlice.AroundAsync(db, id, stop);
        var state = actor.IsLibrarian ? whole : ShowPacket.WithoutPeople(whole);
        var names = LineageSlice.Names(state);
        var holds = (await LineageSql.HoldsAbove(db, id).AsNoTracking().ToListAsync(stop)).Select(hold => hold.ToRecord()).Where(hold => hold.Stands).OrderBy(hold => hold.Id.Value).ToArray();
        var history = await HistoryAsync(db, id, stop);
        var above = Above(state, id);
        var claims = state.Claims.Where(claim => above.Contains(claim.Node.Value)).OrderBy(claim => claim.Id.Value).ToArray();
        var people = actor.IsLibrarian ? await PeopleAsync(db, state, history, stop) : new Dictionary<Guid, string>();
        var lot = state.Find(new LotId(id))!;
        return new LotView(
            actor.IsVolunteer ? lot with { Place = whole.Find(lot.Id)!.Place } : lot,
            names[id],
            state,
            names,
            holds,
            claims,
            [.. state.Packets.Where(packet => packet.Lot.Value == id && packet.Standing != PacketStanding.Void).OrderBy(packet => packet.Id.Value)],
            [.. state.Tests.Where(test => test.Lot.Value == id && !test.IsVoid).OrderBy(test => test.ReadOn).ThenBy(test => test.Id.Value)],
            [.. history.Select(row => new HistoryLine(row.Sequence, row.At, row.Kind, actor.IsLibrarian ? people.GetValueOrDefault(row.ActorId) : null, row.ToEntry()?.ReadAct()))],
            actor.IsLibrarian ? Holders(state, id, people) : [],
            people,
            await DeterminedPlants.OfAsync(db, whole, stop),
            await RecallsAsync(db, holds, stop))
        {
            Variety = await ShowPacket.VarietyAsync(db, names[id], stop),
        };
    }

    private static async Task<List<LedgerEntryRow>> HistoryAsync(LibraryDbContext db, long id, CancellationToken stop) =>
        await db.Set<LedgerEntryRow>().AsNoTracking()
            .Where(entry => db.Set<LedgerSubjectRow>().Any(subject => subject.NodeId == id && subject.Sequence == entry.Sequence))
            .OrderByDescending(entry => entry.Sequence).Take(MostHistory).ToListAsync(stop);

    private static async Task<IReadOnlyDictionary<Guid, string>> PeopleAsync(LibraryDbContext db, SeedState state, List<LedgerEntryRow> history, CancellationToken stop) =>
        await PersonNames.OfAsync(
            db,
            [
                .. state.Packets.Select(packet => packet.Holder?.Value), .. state.Claims.Select(claim => claim.By?.Value), .. state.Accessions.Select(accession => accession.Donor?.Value),
                .. state.GrowOuts.Select(growOut => growOut.Grower?.Value), .. history.Select(entry => (Guid?)entry.ActorId),
            ],
            stop);

    private static HashSet<long> Above(SeedState state, long id)
    {
        var parents = state.Edges.ToLookup(edge => edge.Child.Value, edge => edge.Parent.Value);
        var seen = new HashSet<long> { id };
        var open = new Stack<long>([id]);
        while (open.TryPop(out var node))
        {
            foreach (var parent in parents[node])
            {
                if (seen.Add(parent)) open.Push(parent);
            }
        }
        return seen;
    }

    private static IReadOnlyList<Holder> Holders(SeedState state, long id, IReadOnlyDictionary<Guid, string> people)
    {
        var graph = Lineage.Graph.LineageGraph.Of(state);
        return [.. graph.Holders(new(id), state.Packets, state.Transfers).Select(holding => new Holder(
            graph[holding.Node].Label,
            holding.Person?.Value,
            holding.Library ?? people.GetValueOrDefault(holding.Person!.Value.Value, PersonNames.Erased),
            state.Find(new PacketId(holding.Node.Value)) is { Standing: PacketStanding.Lent }))];
    }

    private static async Task<IReadOnlyList<RecallNotice>> RecallsAsync(LibraryDbContext db, IReadOnlyList<Hold> holds, CancellationToken stop)
    {
        var ids = holds.Where(hold => hold.Reason == Lineage.Acts.HoldReason.Recall).Select(hold => hold.Id.Value).ToArray();
        var rows = await db.Set<RecallRow>().AsNoTracking().Where(recall => ids.Contains(recall.HoldId)).OrderBy(recall => recall.HoldId).ToListAsync(stop);
        return [.. rows.Select(row => new RecallNotice(row.HoldId, row.RecalledOn, row.Reason, null))];
    }
}
