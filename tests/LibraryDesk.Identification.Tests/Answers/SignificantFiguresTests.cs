using System.Globalization;
using LibraryDesk.Identification.Answers;

namespace LibraryDesk.Identification.Tests.Answers;

public sealed class SignificantFiguresTests
{
    [Theory]
    [InlineData(3689.2, 3, "3690")]
    [InlineData(370.4, 2, "370")]
    [InlineData(0.012345, 2, "0.012")]
    [InlineData(99.96, 3, "100")]
    [InlineData(5_000_000, 4, "5000000")]
    [InlineData(-1234, 2, "-1200")]
    [InlineData(0, 4, "0")]
    public void A_measure_is_rounded_and_written_without_an_exponent(double value, int figures, string written) =>
        Assert.Equal(written, SignificantFigures.Round(value, figures).ToString(SignificantFigures.Format, CultureInfo.InvariantCulture));

    [Fact]
    public void What_is_not_finite_comes_back() => Assert.True(double.IsPositiveInfinity(SignificantFigures.Round(double.PositiveInfinity, 3)));
}
