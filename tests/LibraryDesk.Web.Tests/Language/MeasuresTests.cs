using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Tests.Language;

/// <summary>Factors against NIST Special Publication 811, appendix B.8: 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 oz = 28.349 523 125 g.</summary>
public class MeasuresTests
{
    [Theory]
    [InlineData("22", "mm", 22)]
    [InlineData("2,2 cm", "mm", 22)]
    [InlineData("1 in", "mm", 25.4)]
    [InlineData("7/8 in", "mm", 22.225)]
    [InlineData("1 1/2\"", "mm", 38.1)]
    [InlineData("100 ft", "m", 30.48)]
    [InlineData("1mi", "m", 1609.344)]
    [InlineData("30 m", "m", 30)]
    [InlineData("1 oz", "g", 28.349523125)]
    [InlineData("1 lb.", "g", 453.59237)]
    [InlineData("45", "%", 45)]
    [InlineData("-3", "mm", -3)]
    public void What_is_typed_is_read_in_its_own_unit(string typed, string unit, double value)
    {
        Assert.True(Measures.TryRead(typed, unit, out var read));
        Assert.Equal(value, read, 1e-9);
    }

    [Theory]
    [InlineData("", "mm")]
    [InlineData("mm", "mm")]
    [InlineData("2 oz", "mm")]
    [InlineData("2 handfuls", "mm")]
    [InlineData("3/0 in", "mm")]
    [InlineData("1/2/3", "mm")]
    [InlineData("2 mm", "%")]
    [InlineData("1 2", "mm")]
    [InlineData("1e9", "mm")]
    [InlineData("NaN", "mm")]
    public void What_is_no_measure_is_not_read(string typed, string unit) => Assert.False(Measures.TryRead(typed, unit, out _));

    [Fact]
    public void Metric_units_stand_alone_unless_a_library_wants_both() => Assert.Equal(("mm", "250 m"), (Measures.Unit("mm", 22), Measures.Metres(250)));

    [Theory]
    [InlineData("mm", 22, null, "mm (0.87 in)")]
    [InlineData("mm", 20, 24.0, "mm (0.79–0.94 in)")]
    [InlineData("m", 250, null, "m (820 ft)")]
    [InlineData("g", 12.5, null, "g (0.44 oz)")]
    [InlineData("%", 40, null, "%")]
    [InlineData(null, 3, null, null)]
    public void A_library_that_wants_both_has_the_other_beside(string? unit, double low, double? high, string? said) => Assert.Equal(said, Measures.Both(unit, low, high));
}
