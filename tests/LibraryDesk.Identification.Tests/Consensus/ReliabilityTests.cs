using LibraryDesk.Identification.Consensus;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Identification.Tests.Consensus;

public sealed class ReliabilityTests
{
    /// <summary>Closed forms: Beta(n, 1) lies below x with probability x^n, Beta(1, n) with 1 - (1 - x)^n.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2.5)]
    [InlineData(5)]
    [InlineData(80)]
    public void Beta_laws_with_a_closed_form(double n)
    {
        foreach (var p in new[] { 0.025, 0.5, 0.975 })
        {
            Assert.Equal(Math.Pow(p, 1 / n), BetaInterval.Quantile(n, 1, p), 9);
            Assert.Equal(1 - Math.Pow(1 - p, 1 / n), BetaInterval.Quantile(1, n, p), 9);
        }
    }

    /// <summary>Clopper and Pearson's ends are quantiles of Beta(k, n - k + 1) and Beta(k + 1, n - k) (common practice, no source).</summary>
    [Theory]
    [InlineData(3, 10)]
    [InlineData(17, 20)]
    [InlineData(55, 400)]
    public void Exact_binomial_intervals_come_out_of_the_same_law(int k, int n)
    {
        var (low, high) = BinomialInterval.Exact(k, n);
        Assert.Equal(low, BetaInterval.Quantile(k, n - k + 1, 0.025), 8);
        Assert.Equal(high, BetaInterval.Quantile(k + 1, n - k, 0.975), 8);
    }

    [Fact]
    public void Who_differs_from_the_rest_is_less_reliable_and_few_votes_leave_it_open()
    {
        // Three people on twenty items of two kinds; the third is always against the two others.
        var votes = Enumerable.Range(0, 20).SelectMany(i => new[] { new Vote(i, 0, i % 2), new Vote(i, 1, i % 2), new Vote(i, 2, 1 - (i % 2)) }).ToList();
        var many = Reliability.Of(votes, 20, 3, 2)!;
        Assert.True(many[2].High < many[0].Low);
        var few = Reliability.Of(votes[..3], 1, 3, 2)!;
        Assert.True(few[2].High > few[0].Low);
    }

    [Fact]
    public void Agreement_s_interval_holds_its_estimate_and_is_the_same_each_time()
    {
        int[][] counts = [[2, 0], [2, 0], [1, 1], [0, 2], [0, 2], [2, 0], [1, 1], [0, 2]];
        var kappa = Agreement.Fleiss(counts)!.Kappa;
        var interval = Agreement.FleissInterval(counts)!.Value;
        Assert.InRange(kappa, interval.Low, interval.High);
        Assert.Equal(interval, Agreement.FleissInterval(counts));
        Assert.Null(Agreement.FleissInterval([]));
    }
}
