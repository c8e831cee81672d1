using LibraryDesk.Lineage.Numbers;

namespace LibraryDesk.Lineage.Tests.Numbers;

/// <summary>Checked against closed forms, and against printed tables of the normal distribution (digits beyond print from memory).</summary>
public class NumbersTests
{
    [Theory]
    [InlineData(0.3, 2, 5)]
    [InlineData(0.01, 1, 9)]
    [InlineData(0.999, 40, 3)]
    [InlineData(0.5, 200, 210)]
    public void Whole_parameters_give_the_binomial_sum(double x, int alpha, int beta)
    {
        // I_x(a, b) is the chance of a successes or more in a + b - 1 trials.
        var n = alpha + beta - 1;
        var sum = Enumerable.Range(alpha, n - alpha + 1).Sum(k => Math.Exp(BetaDistribution.LogGamma(n + 1) - BetaDistribution.LogGamma(k + 1) - BetaDistribution.LogGamma(n - k + 1) + (k * Math.Log(x)) + ((n - k) * Math.Log(1 - x))));
        Assert.Equal(sum, BetaDistribution.Below(x, alpha, beta), 11);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(5, 3.1780538303479458)]
    [InlineData(0.5, 0.57236494292470008)]
    [InlineData(100, 359.13420536957540)]
    public void Log_gamma_gives_factorials_and_the_root_of_pi(double value, double expected) => Assert.Equal(expected, BetaDistribution.LogGamma(value), 11);

    [Theory]
    [InlineData(0.975, 1.959963984540054)]
    [InlineData(0.5, 0)]
    [InlineData(0.05, -1.6448536269514722)]
    [InlineData(1e-9, -5.9978070150076865)]
    public void Normal_deviates_are_those_of_the_printed_tables(double probability, double deviate)
    {
        Assert.Equal(deviate, NormalDistribution.Deviate(probability), 9);
        Assert.Equal(probability, NormalDistribution.Below(deviate), 12);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(17)]
    [InlineData(64)]
    public void Quadrature_is_exact_for_the_polynomials_it_should_be(int count)
    {
        var nodes = GaussLegendre.On01(count);
        for (var degree = 0; degree < 2 * count; degree++) Assert.Equal(1.0 / (degree + 1), nodes.Sum(node => node.Weight * Math.Pow(node.Node, degree)), 12);
    }
}
