using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.MixUps;

/// <summary>One thing that may have happened, with where and what it would take in.</summary>
/// <param name="Cause">What.</param>
/// <param name="Place">The accession, lot, packet or grow-out.</param>
/// <param name="On">The day: of arrival, sowing or packing.</param>
/// <param name="Source">How the seed came, for an accession; null for all else.</param>
/// <param name="Scope">What it takes in.</param>
public sealed record PlacedCause(Cause Cause, LineageNode Place, DateOnly On, SeedSource? Source, CauseScope Scope)
{
    /// <summary>True when <see cref="On"/> is only the earliest it can be: of a growing whose day of sowing was not told.</summary>
    public bool OrLater { get; init; }
}

/// <summary>One cause with the chance that it happened.</summary>
/// <param name="Placed">The cause.</param>
/// <param name="Probability">That it happened, alone or together with another: 0 to 1. Those of several causes can sum to more than 1.</param>
/// <param name="Alone">That it and nothing else happened.</param>
/// <param name="Odds">The probability as seeds in twenty.</param>
/// <param name="SpeaksFor">For each plant of the view, in decibans, how much it speaks for this against "nothing is wrong"; empty where that was not worked out.</param>
public sealed record RankedCause(PlacedCause Placed, double Probability, double Alone, OddsInTwenty Odds, IReadOnlyList<double> SpeaksFor);

/// <summary>What happened as a whole.</summary>
/// <param name="Causes">None, one or two.</param>
/// <param name="Probability">0 to 1; all explanations sum to 1.</param>
public sealed record WholeExplanation(IReadOnlyList<PlacedCause> Causes, double Probability);

/// <summary>A check worth making.</summary>
/// <param name="Code">The lot or packet to sow from.</param>
/// <param name="Kind">Which of the two.</param>
/// <param name="Plants">How many plants.</param>
/// <param name="Share">What part of the open question it answers on average, 0 to 1.</param>
/// <param name="Bits">The same in bits.</param>
public sealed record CheckWorthMaking(string Code, NodeKind Kind, int Plants, double Share, double Bits);

/// <summary>Where the mix-up may have happened, for one lot's kin.</summary>
/// <param name="Code">The lot asked about.</param>
/// <param name="Said">What it was said to be before any plant was determined.</param>
/// <param name="Plants">Every determined plant of its kin, as it was weighed, newest first.</param>
/// <param name="Causes">Likeliest first: those that deserve a seed of twenty, and at least three.</param>
/// <param name="Explanations">The likeliest explanations as wholes.</param>
/// <param name="Others">The chance of all explanations not shown, together.</param>
/// <param name="NothingWrong">The chance that nothing is wrong.</param>
/// <param name="Checks">What to grow next, best first; empty when nothing would tell.</param>
/// <param name="IsExact">False when a part had to be reckoned apart.</param>
/// <param name="LeftOut">Older plants that were not taken in.</param>
public sealed record MixUpView(
    string Code,
    GoesBy Said,
    IReadOnlyList<WeighedPlant> Plants,
    IReadOnlyList<RankedCause> Causes,
    IReadOnlyList<WholeExplanation> Explanations,
    double Others,
    double NothingWrong,
    IReadOnlyList<CheckWorthMaking> Checks,
    bool IsExact,
    int LeftOut)
{
    /// <summary>Plants that speak against the name.</summary>
    public int Off => Plants.Count(plant => !plant.Fits);
}

/// <summary>Looks for the event where a name and its seed parted, from the determined plants of a lot's whole kin. Nothing is written.</summary>
public sealed class FindMixUp(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    /// <summary>Plants grown in a check; the library's own choice.</summary>
    public const int PlantsOfCheck = 8;

    private const int MostShown = 8;
    private const int LeastShown = 3;
    private const int MostChecks = 5;

    private static readonly RateTable Rates = RateTable.Standard;

    public async Task<Outcome<MixUpView>> ReadAsync(Actor actor, string? lotCode, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        if (!LotCode.TryParse(lotCode, out var read, out var no)) return no;
        var text = read.ToString();
        await using var db = await factory.CreateDbContextAsync(stop);
        var lot = await db.Set<LotRow>().Where(row => row.Code == text && !row.IsVoid).Select(row => row.Id).SingleOrDefaultAsync(stop);
        if (lot == 0) return FindingRefusals.NoLot(text);
        var family = await FamilySlice.ReadAsync(db, lot, null, stop);
        var plants = await new PlantWeights(shelf, Rates).OfAsync(db, family, stop);

        var graph = LineageGraph.Of(family.State);
        plants = [.. plants.Where(plant => graph.Has(plant.Plant.Packet))];
        var said = family.SaidNames().GetValueOrDefault(lot, GoesBy.NotKnown);
        if (plants.Count == 0) return new MixUpView(text, said, [], [], [], 0, 1, [], true, family.LeftOut);
        var tested = plants.Select(plant => plant.Tested).ToArray();
        var causes = CauseList.Of(graph, tested, family.State.Packets, NameEvidence.Of(family.State), Rates);
        var finder = new MixUpFinder(graph, tested, causes, family.State.Packets);
        var report = finder.Find();

        var explanations = report.Explanations.Take(MostShown).ToArray();
        var likeliest = report.Causes.TakeWhile((one, at) => at < LeastShown || (at < MostShown && one.Probability >= 0.05)).ToArray();
        var placed = new Dictionary<Cause, PlacedCause>();
        foreach (var cause in explanations.SelectMany(one => one.Causes).Concat(likeliest.Select(one => one.Cause)).Distinct()) placed[cause] = await PlaceAsync(db, cause, graph, family.State, stop);
        return new MixUpView(
            text, said, plants,
            [.. likeliest.Select(one => Rank(placed[one.Cause], one.Probability, report))],
            [.. explanations.Select(one => new WholeExplanation([.. one.Causes.Select(cause => placed[cause])], one.Probability))],
            Math.Max(0, 1 - explanations.Sum(one => one.Probability)),
            report.NothingWrong, Checks(finder, report, graph, family), report.IsExact, family.LeftOut);
    }

    /// <summary>
    /// The chance that seed of a lot or packet is what its name says, by the determined plants of its whole kin: 0 to 1. Null where none was
    /// determined, so that its history is all there is. Says nothing of people, so anybody may read it.
    /// </summary>
    /// <param name="lot">The lot.</param>
    /// <param name="packet">The packet of it; null for the lot itself.</param>
    /// <param name="stop">Stops.</param>
    public async Task<double?> NextSeedAsync(LotId lot, PacketId? packet, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var family = await FamilySlice.ReadAsync(db, lot.Value, packet?.Value, stop);
        var graph = LineageGraph.Of(family.State);
        var plants = (await new PlantWeights(shelf, Rates).OfAsync(db, family, stop)).Where(plant => graph.Has(plant.Plant.Packet)).Select(plant => plant.Tested).ToArray();
        if (plants.Length == 0) return null;
        var node = packet?.Node ?? lot.Node;

        // A plant that shows nothing brings in what may have happened to this seed alone.
        TestedPlant[] tested = [.. plants, new("", node, 1, 1, IsByBorrower: false)];
        return new MixUpFinder(graph, tested, CauseList.Of(graph, tested, family.State.Packets, NameEvidence.Of(family.State), Rates), family.State.Packets).NextFits(node);
    }

    private static RankedCause Rank(PlacedCause placed, double probability, MixUpReport report)
    {
        var with = report.Explanations.Where(one => one.Causes.Contains(placed.Cause)).ToArray();
        var opened = with.Where(one => one.SpeaksFor.Count > 0).OrderBy(one => one.Causes.Count).FirstOrDefault();
        return new(placed, probability, with.FirstOrDefault(one => one.Causes.Count == 1)?.Probability ?? 0, OddsInTwenty.Share([probability, 1 - probability])[0], opened?.SpeaksFor ?? []);
    }

    private static IReadOnlyList<CheckWorthMaking> Checks(MixUpFinder finder, MixUpReport report, LineageGraph graph, FamilySlice family)
    {
        var open = -report.Explanations.Where(one => one.Probability > 0).Sum(one => one.Probability * Math.Log2(one.Probability));
        if (open <= 0) return [];
        return [.. finder.NextChecks([.. family.Candidates.Where(graph.Has)], PlantsOfCheck, Rates[RateTable.TestSlip].Value)
            .Where(check => check.Bits / open >= 0.01).Take(MostChecks)
            .Select(check => new CheckWorthMaking(graph[check.Node].Label, graph[check.Node].Kind, check.Plants, Math.Min(1, check.Bits / open), check.Bits))];
    }

    private static async Task<PlacedCause> PlaceAsync(LibraryDbContext db, Cause cause, LineageGraph graph, SeedState state, CancellationToken stop)
    {
        var place = graph[cause.Node];
        var on = cause.Packing is { } packing ? state.Packets.First(packet => packet.Packing == packing).PackedOn : place.On;
        return new(cause, place, on, state.Find(new AccessionId(cause.Node.Value))?.Source, await CauseScope.OfAsync(db, cause, stop))
        {
            OrLater = state.Find(new GrowOutId(cause.Node.Value))?.Facts.SownLater is true,
        };
    }
}
