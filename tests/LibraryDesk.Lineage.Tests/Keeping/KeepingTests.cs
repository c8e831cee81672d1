using System.Globalization;
using LibraryDesk.Lineage.Keeping;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests.Keeping;

public class KeepingTests
{
    // Reference values: beta quantiles of SciPy 1.10.1 at 0.025 and 0.975, the definition of the Clopper-Pearson interval.
    [Theory]
    [InlineData(50, 48, 0.8628623743960326, 0.9951185665738356)]
    [InlineData(10, 0, 0, 0.3084971078187608)]
    [InlineData(10, 5, 0.18708602844739855, 0.8129139715526015)]
    [InlineData(100, 81, 0.7193020420263876, 0.8815568038674564)]
    public void Intervals_are_exact(int sown, int germinated, double low, double high)
    {
        var interval = Germination.Interval(sown, germinated);
        Assert.Equal(low, interval.Low, 1e-10);
        Assert.Equal(high, interval.High, 1e-10);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(20)]
    [InlineData(400)]
    public void None_and_all_have_a_closed_form(int sown)
    {
        Assert.Equal(1 - Math.Pow(0.025, 1.0 / sown), Germination.Interval(sown, 0).High, 10);
        Assert.Equal(Math.Pow(0.025, 1.0 / sown), Germination.Interval(sown, sown).Low, 10);
    }

    // ISTA Rules Table 5B, from memory, as kept in ../reference/data/seed/replicate-tolerance-4x100.csv.
    [SkippableFact]
    public void Replicates_may_differ_as_much_as_the_table_says()
    {
        foreach (var row in ReferenceFiles.Csv("seed/replicate-tolerance-4x100.csv"))
        {
            // The table gives one figure for a range of means; the formula is rounded at the range's rarer end, so one either side is the same table to rounding.
            foreach (var mean in new[] { Number(row["mean_from"]), Number(row["mean_to"]) })
            {
                var range = (int)Number(row["max_range_between_replicates"]);
                Assert.InRange(Germination.ReplicateTolerance(mean), range - 1, range + 1);
            }
        }
    }

    [Fact]
    public void Replicates_too_far_apart_are_not_one_test()
    {
        Assert.True(Germination.AreReplicatesAlike([new(100, 90), new(100, 88), new(100, 92), new(100, 85)]));
        Assert.False(Germination.AreReplicatesAlike([new(100, 90), new(100, 88), new(100, 92), new(100, 70)]));
        Assert.Null(Germination.AreReplicatesAlike([new(20, 18)]));
    }

    // Data set gcdata of the package germinationmetrics 0.1.10 (Aravind et al.).
    [SkippableFact]
    public void Percentages_and_mean_times_are_those_of_the_package()
    {
        var expected = ReferenceFiles.Csv("seed/germination-expected.csv").ToDictionary(row => (row["genotype"], row["rep"]));
        foreach (var row in ReferenceFiles.Csv("seed/germination-counts.csv"))
        {
            var course = new GerminationCourse(Enumerable.Range(1, 14).Select(day => (int)Number(row[$"Day{day:00}"])), (int)Number(row["Seeds"]));
            var of = expected[(row["Genotype"], row["Rep"])];
            Assert.Equal(Number(of["germination_percent"]), course.Percent, 1e-6);
            Assert.Equal(Number(of["mean_germination_time_days"]), course.MeanTime!.Value, 1e-6);
        }
    }

    // ../reference/data/seed/SOURCE.md: indices of the first sample, equal to the package's tests or recomputed.
    [Fact]
    public void Indices_of_the_first_sample_are_the_published_ones()
    {
        var course = new GerminationCourse([0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1, 0, 0, 0], 50);
        Assert.Equal((40, 80, 5, 11), (course.Germinated, course.Percent, course.FirstDay!.Value, course.LastDay!.Value));
        Assert.Equal(6.7, course.MeanTime!.Value, 9);
        Assert.Equal(1.446153846, course.Variance!.Value, 9);
        Assert.Equal(6.138924964, course.Speed, 9);
        Assert.Equal(0.266666667, course.Synchrony!.Value, 9);
        Assert.Equal(2.062987252, course.Uncertainty!.Value, 9);
        Assert.Equal(5.970588, course.HalfTime!.Value, 6);
        Assert.Equal(5.941176, course.HalfTimeFarooq!.Value, 6);
    }

    // Ellis & Roberts 1980, with the constants of Demir et al. 2009 for pepper and the package's for rice.
    [SkippableFact]
    public void Viability_falls_as_in_the_worked_examples()
    {
        foreach (var row in ReferenceFiles.Csv("seed/viability-examples.csv"))
        {
            var constants = new ViabilityConstants(row["crop"], Number(row["KE"]), Number(row["CW"]), Number(row["CH"]), Number(row["CQ"]), "worked example");
            var forecast = ViabilityForecast.Make(constants, Number(row["initial_percent"]), new(Number(row["moisture_percent_fresh"]), Number(row["temperature_c"]))).Match(made => made, no => throw new InvalidOperationException(no.Message));
            Assert.Equal(1, forecast.SigmaDays / Number(row["sigma_days"]), 1e-6);
            Assert.Equal(Number(row["final_percent"]), forecast.PercentAfter(Number(row["days"])), 1e-4);
        }
    }

    [Fact]
    public void Pepper_falls_from_98_to_89_in_twenty_years_of_cool_dry_store()
    {
        var forecast = ViabilityForecast.Make("Capsicum annuum", 98, new(6, 5)).Match(made => made, no => throw new InvalidOperationException(no.Message));
        Assert.Equal(89.380, forecast.PercentAfter(7300), 3);
        Assert.Equal(7300, forecast.DaysUntil(forecast.PercentAfter(7300)), 3);
    }

    [SkippableFact]
    public void Published_constants_are_those_of_the_compilation()
    {
        var rows = ReferenceFiles.Csv("seed/viability-constants.csv");
        foreach (var constants in ViabilityConstants.Published)
        {
            Assert.Contains(rows, row => row["species"] == constants.Species && Number(row["KE"]) == constants.Ke && Number(row["CW"]) == constants.Cw && Number(row["CH"]) == constants.Ch && Number(row["CQ"]) == constants.Cq);
        }
    }

    [Theory]
    [InlineData("Capsicum baccatum", 98, 6.0, 5.0, ViabilityForecast.NoConstantsCode)]
    [InlineData("Capsicum annuum", 98, null, 5.0, ViabilityForecast.NoConditionsCode)]
    [InlineData("Capsicum annuum", 98, 30.0, 5.0, ViabilityForecast.OutsideCode)]
    [InlineData("Capsicum annuum", 100, 6.0, 5.0, ViabilityForecast.NoStartCode)]
    public void What_cannot_be_forecast_is_said(string species, double initial, double? moisture, double? temperature, string code) =>
        Assert.Equal(code, ViabilityForecast.Make(species, initial, new(moisture, temperature)).Refusal?.Code);

    [Fact]
    public void A_lot_is_regrown_below_85_in_100_of_its_own_start()
    {
        // A lot that began at 96 is due below 81.6 (FAO 2014, as remembered in ../reference/labels-and-law.md).
        Assert.False(Plan(96, 82).RegrowNow);
        Assert.True(Plan(96, 81).RegrowNow);
        Assert.True(Plan(96, 84, new KeepingRule(IsOfInitial: false)).RegrowNow);
        Assert.False(Plan(80, 69).RegrowNow);
    }

    [Fact]
    public void Without_a_forecast_the_fixed_time_counts()
    {
        var plan = Plan(96, 90);
        Assert.False(plan.RestsOnForecast);
        Assert.Equal(ViabilityForecast.NoConditionsCode, plan.CannotForecast?.Code);
        Assert.Equal(Day(2024).AddDays(730), plan.TestBy);
    }

    private static KeepingPlan Plan(int first, int last, KeepingRule? rule = null)
    {
        var lot = new TestLibrary().Lot(5000);
        GerminationTest[] tests = [new(new(90), lot.Id, Day(2021), [new(100, first)], 14), new(new(91), lot.Id, Day(2024), [new(100, last)], 14)];
        return KeepingPlan.For(lot, tests, "Capsicum annuum", new(null, null), rule ?? new());
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
