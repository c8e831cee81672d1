using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>How and when the seed of a lot was grown, read from the nearest growing upstream; several where lots were blended.</summary>
/// <param name="HarvestYears">Years it ripened, rising; empty when not known.</param>
/// <param name="Isolations">How it was kept from crossing, each way once; empty when nothing was told.</param>
/// <param name="NearestMetres">The nearest other variety, in metres; null when not told.</param>
public sealed record SeedGrown(IReadOnlyList<int> HarvestYears, IReadOnlyList<Isolation> Isolations, int? NearestMetres);

/// <summary>What labels say of lots, read for many at once.</summary>
internal sealed class LotFacts
{
    private readonly Dictionary<long, LotRow> _lots = [];
    private readonly Dictionary<long, GrowOutRow> _growOuts = [];
    private readonly Dictionary<long, AccessionRow> _accessions = [];
    private readonly Dictionary<long, GerminationTest> _tests = [];
    private ILookup<long, LineageEdgeRow> _parents = Enumerable.Empty<LineageEdgeRow>().ToLookup(edge => edge.ChildId);
    private ILookup<long, HoldReason> _holds = Enumerable.Empty<HoldRow>().ToLookup(hold => hold.NodeId, hold => hold.Reason);
    private IReadOnlyDictionary<long, GoesBy> _names = new Dictionary<long, GoesBy>();
    private HashSet<(string Species, string Name)> _hybrids = [];

    private LotFacts()
    {
    }

    public static async Task<LotFacts> ReadAsync(LibraryDbContext db, IReadOnlyCollection<long> lots, IReadOnlyCollection<long> packets, CancellationToken stop)
    {
        var facts = new LotFacts();
        if (lots.Count == 0) return facts;
        var edges = await LineageSql.EdgesAboveAny(db, lots).AsNoTracking().ToListAsync(stop);
        var all = edges.Select(edge => edge.ParentId).Concat(edges.Select(edge => edge.ChildId)).Concat(lots).Concat(packets).Distinct().ToArray();
        facts._parents = edges.ToLookup(edge => edge.ChildId);
        foreach (var lot in await db.Set<LotRow>().AsNoTracking().Where(row => all.Contains(row.Id)).ToListAsync(stop)) facts._lots[lot.Id] = lot;
        foreach (var growOut in await db.Set<GrowOutRow>().AsNoTracking().Where(row => all.Contains(row.Id)).ToListAsync(stop)) facts._growOuts[growOut.Id] = growOut;
        foreach (var accession in await db.Set<AccessionRow>().AsNoTracking().Where(row => all.Contains(row.Id)).ToListAsync(stop)) facts._accessions[accession.Id] = accession;
        foreach (var test in await db.Set<GerminationTestRow>().AsNoTracking().Where(row => lots.Contains(row.LotId) && !row.IsVoid).OrderBy(row => row.ReadOn).ThenBy(row => row.Id).ToListAsync(stop)) facts._tests[test.LotId] = test.ToRecord();
        facts._holds = (await db.Set<HoldRow>().AsNoTracking().Where(row => all.Contains(row.NodeId) && row.ReleasedOn == null && !row.IsVoid).ToListAsync(stop)).ToLookup(hold => hold.NodeId, hold => hold.Reason);
        facts._names = await LineageNames.OfAsync(db, lots, stop);
        var named = facts._names.Values.Select(name => name.Variety?.Trim().ToUpperInvariant()).OfType<string>().Distinct().ToArray();
        facts._hybrids = (await db.Set<VarietyRow>().Where(row => row.Breeding == BreedingStatus.F1Hybrid && named.Contains(row.NormalizedName)).Select(row => new { row.Species, row.NormalizedName }).ToListAsync(stop))
            .Select(row => (row.Species, row.NormalizedName)).ToHashSet();
        return facts;
    }

    public SeedLabel Label(long lot, long? packet, string code, Quantity seed, DateOnly on)
    {
        var name = _names[lot];
        var hybrid = name is { Variety: { } variety, Species: { } species } && _hybrids.Contains((species, variety.Trim().ToUpperInvariant()));
        var holds = Above(lot).Concat(packet is { } one ? [one] : []).SelectMany(node => _holds[node]).Distinct().Order().ToArray();
        return new(code, packet is null, _lots[lot].Code, name, hybrid, seed, on, Grown(lot), _tests.GetValueOrDefault(lot), holds);
    }

    private HashSet<long> Above(long lot)
    {
        var seen = new HashSet<long> { lot };
        var open = new Stack<long>(seen);
        while (open.TryPop(out var node))
        {
            foreach (var edge in _parents[node])
            {
                if (seen.Add(edge.ParentId)) open.Push(edge.ParentId);
            }
        }
        return seen;
    }

    // Splits and blends are looked through to the growing or the accession behind them.
    private SeedGrown Grown(long lot)
    {
        var years = new SortedSet<int>();
        var isolations = new SortedSet<Isolation>();
        int? nearest = null;
        var open = new Stack<long>([lot]);
        var seen = new HashSet<long>();
        while (open.TryPop(out var node))
        {
            if (!seen.Add(node)) continue;
            foreach (var parent in _parents[node].Select(edge => edge.ParentId))
            {
                if (_growOuts.TryGetValue(parent, out var growOut))
                {
                    years.Add((growOut.HarvestedOn ?? _lots[node].MadeOn).Year);
                    if (growOut.Isolation != Isolation.NotTold) isolations.Add(growOut.Isolation);
                    nearest = growOut.NearestMetres is { } metres && !(nearest < metres) ? metres : nearest;
                }
                else if (_accessions.TryGetValue(parent, out var accession))
                {
                    if (accession.HarvestYear is { } year) years.Add(year);
                }
                else
                {
                    open.Push(parent);
                }
            }
        }
        return new([.. years], [.. isolations], nearest);
    }
}
