using LibraryDesk.Identification.Record;

namespace LibraryDesk.Identification.Tests.Record;

public sealed class DeskRecordTests
{
    /// <summary>
    /// Ten forecasts of rain worked by hand after the formulas of Brier 1950 and Murphy 1973: said 0.8 four times, three happened; said 0.2 six times,
    /// one happened. Reliability .4 (.8-.75)^2 + .6 (.2-1/6)^2; resolution .4 (.75-.4)^2 + .6 (1/6-.4)^2; uncertainty .4 x .6.
    /// </summary>
    [Fact]
    public void Murphy_s_parts_sum_to_the_score()
    {
        List<BinaryForecast> rain = [.. Enumerable.Repeat(new BinaryForecast(0.8, true), 3), new(0.8, false), .. Enumerable.Repeat(new BinaryForecast(0.2, false), 5), new(0.2, true)];
        var parts = MurphyDecomposition.Of(rain)!;
        Assert.Equal((0.4 * 0.05 * 0.05) + (0.6 / 30 / 30), parts.Reliability, 12);
        Assert.Equal((0.4 * 0.35 * 0.35) + (0.6 * (7.0 / 30) * (7.0 / 30)), parts.Resolution, 12);
        Assert.Equal(0.24, parts.Uncertainty, 12);
        Assert.Equal(((3 * 0.04) + 0.64 + (5 * 0.04) + 0.64) / 10, parts.Score, 12);
        Assert.Equal(parts.Score, parts.Reliability - parts.Resolution + parts.Uncertainty, 12);
    }

    [Fact]
    public void Scores_of_two_cases_by_hand()
    {
        var record = DeskRecord.Of([new JudgedForecast([0.7, 0.2, 0.1], 0), new JudgedForecast([0.5, 0.3, 0.2], 1)])!;
        Assert.Equal(0.5, record.Accuracy);
        Assert.Equal(((0.09 + 0.04 + 0.01) + (0.25 + 0.49 + 0.04)) / 2, record.Brier, 12);
        Assert.Equal(-(Math.Log(0.7) + Math.Log(0.3)) / 2, record.LogLoss, 12);
        Assert.Equal((0.3 + 0.5) / 2, record.CalibrationError, 12);
    }

    /// <summary>Clopper and Pearson 1934: for 0 of 10 the upper end is 1 - 0.025^(1/10); for 4 of 10 the interval is 0.1216 to 0.7376 (handbook table).</summary>
    [Fact]
    public void Exact_intervals()
    {
        Assert.Equal(1 - Math.Pow(0.025, 0.1), BinomialInterval.Exact(0, 10).High, 9);
        Assert.Equal(0, BinomialInterval.Exact(0, 10).Low);
        var (low, high) = BinomialInterval.Exact(4, 10);
        Assert.Equal(0.1216, low, 4);
        Assert.Equal(0.7376, high, 4);
        Assert.Equal(1, BinomialInterval.Exact(10, 10).High);
    }

    [Fact]
    public void True_odds_pass_and_boastful_odds_do_not()
    {
        int honest = 0, boastful = 0;
        for (var seed = 0; seed < 20; seed++)
        {
            if (Drawn(seed, boast: 0).IsMiscalibrated) honest++;
            if (Drawn(seed, boast: 0.15).IsMiscalibrated) boastful++;
        }

        // One honest desk in twenty is flagged by chance; four or more of twenty happen less than once in fifty.
        Assert.InRange(honest, 0, 4);
        Assert.InRange(boastful, 16, 20);
    }

    private static DeskRecord Drawn(int seed, double boast)
    {
        var random = new Random(seed);
        var forecasts = new List<JudgedForecast>();
        for (var i = 0; i < 300; i++)
        {
            var p = 0.5 + (0.45 * random.NextDouble());
            var said = Math.Min(0.99, p + boast);
            forecasts.Add(new JudgedForecast([said, 1 - said], random.NextDouble() < p ? 0 : 1));
        }

        return DeskRecord.Of(forecasts)!;
    }

    [Fact]
    public void Without_cases_there_is_no_record() => Assert.Null(DeskRecord.Of([]));
}
