using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Population;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Population;

public class LotPopulationTests
{
    private readonly BlendStory _story = new();
    private readonly LineageGraph _graph;
    private readonly Dictionary<NodeId, GrowOutFacts> _growings;

    public LotPopulationTests()
    {
        _graph = LineageGraph.Of(_story.Library.State);
        _growings = _story.Library.State.GrowOuts.ToDictionary(growOut => growOut.Id.Node, growOut => growOut.Facts);
    }

    // Crow & Kimura 1970: about 2N when the same is taken from each, about N at random.
    [Fact]
    public void Ne_follows_the_variance_of_contributions()
    {
        Assert.Equal(39, EffectiveSize.FromVariance(20, 0), 12);
        Assert.Equal(19.5, EffectiveSize.FromVariance(20, 2), 12);
        Assert.Equal(10, EffectiveSize.WithSelfing(20, 1), 12);
        Assert.Equal(20, EffectiveSize.WithSelfing(20, 0), 12);
    }

    // ../reference/data/pedigree/expected.json, formulae.
    [Fact]
    public void Drift_formulas_give_the_printed_values()
    {
        Assert.Equal(0.923055, EffectiveSize.InbreedingAfter(10, 50), 6);
        Assert.Equal(0.3949939, EffectiveSize.InbreedingAfter(50, 50), 7);
        Assert.Equal(3.6, EffectiveSize.OfSexes(1, 9), 12);
        Assert.Equal(25, EffectiveSize.HarmonicMean([100, 10, 100])!.Value, 12);
        Assert.Equal(0.95, EffectiveSize.HeterozygosityKept([10]), 12);
        Assert.Equal(0.99, EffectiveSize.HeterozygosityKept([50]), 12);
    }

    [Fact]
    public void An_unblended_line_keeps_the_product()
    {
        var population = LotPopulation.Of(_graph, _story.SecondYear.Id.Node, _growings);
        Assert.Equal(EffectiveSize.HeterozygosityKept([23.5, 13.5]), population.HeterozygosityKept, 12);
        Assert.Equal(2, population.Generations, 12);
        Assert.False(population.HasGaps);
    }

    [Fact]
    public void A_blend_of_strangers_is_more_diverse_than_its_parts()
    {
        var (one, both) = (LotPopulation.Of(_graph, _story.SecondYear.Id.Node, _growings), LotPopulation.Of(_graph, _story.Blend.Id.Node, _growings));
        Assert.Equal(1 - (0.75 * 0.75 * (1 - one.HeterozygosityKept)), both.HeterozygosityKept, 12);
        Assert.Equal(1 / ((0.75 * 0.75) + (0.25 * 0.25)), both.EffectiveFounders, 12);
        Assert.Equal(1.5, both.Generations, 12);
    }

    [Fact]
    public void A_blend_of_sisters_wins_nothing_back()
    {
        var library = new TestLibrary();
        var packet = library.PutUp(library.Lot(100), 1, 20)[0];
        var growOut = library.Grow(packet, null, facts: GrowOutFacts.NotTold with { PlantsGrown = 5, PlantsSavedFrom = 5 });
        var whole = library.Harvest(growOut, 400, TestLibrary.Day(2021));
        var half = library.Do(LibraryDesk.Lineage.Rules.LotRules.Split(library.New(TestLibrary.Day(2021)), library.Taking(whole, Quantity.OfSeeds(200)), library.Today));
        var again = library.Blend(TestLibrary.Day(2022), (whole, null), (library.State.Find(half.Lot)!, null));
        var growings = library.State.GrowOuts.ToDictionary(grown => grown.Id.Node, grown => grown.Facts);
        var graph = LineageGraph.Of(library.State);
        Assert.Equal(LotPopulation.Of(graph, whole.Id.Node, growings).HeterozygosityKept, LotPopulation.Of(graph, again.Id.Node, growings).HeterozygosityKept, 12);
    }

    [Fact]
    public void Too_few_plants_are_warned_of_with_the_source()
    {
        // ../reference/data/seed/standards-numbers.csv: selfers at least 12 to 16 plants (Navazio 2009, notes by Brisebois 2010).
        LeastPlants[] least = [new("to keep a variety", 16, "Navazio 2009"), new("rare", 50, "Navazio 2009")];
        var warnings = PopulationWarning.For(LotPopulation.Of(_graph, _story.SecondYear.Id.Node, _growings), least);
        Assert.Equal([(24, 50), (14, 16), (14, 50)], warnings.Select(warning => (warning.PlantsSavedFrom, warning.Least.Plants)));
    }

    [Theory]
    [InlineData(Isolation.Bagged, null, true, CrossingGrade.Slight)]
    [InlineData(Isolation.Open, null, false, CrossingGrade.Slight)]
    [InlineData(Isolation.Distance, 200, true, CrossingGrade.Low)]
    [InlineData(Isolation.Distance, 100, true, CrossingGrade.Some)]
    [InlineData(Isolation.Distance, 40, true, CrossingGrade.High)]
    [InlineData(Isolation.Open, null, true, CrossingGrade.High)]
    [InlineData(Isolation.NotTold, null, null, CrossingGrade.NotKnown)]
    public void Crossing_is_graded_by_what_was_told(Isolation isolation, int? metres, bool? others, CrossingGrade expected)
    {
        var facts = GrowOutFacts.NotTold with { Isolation = isolation, NearestMetres = metres, OthersInFlower = others };
        var risk = CrossingRisk.Of(facts, false, new("seed to share", 183, "McCormack, Guidelines for maintaining purity in pepper varieties"));
        Assert.Equal(expected, risk.Grade);
        Assert.Equal(expected is CrossingGrade.NotKnown, risk.Reason is CrossingReason.NotTold);
        Assert.Equal(risk.Reason is CrossingReason.FarEnough or CrossingReason.TooNear ? metres : null, risk.Metres);
    }
}
