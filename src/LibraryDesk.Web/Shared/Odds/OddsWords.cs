using static LibraryDesk.Web.Shared.SharedText;

namespace LibraryDesk.Web.Shared.Odds;

/// <summary>Odds as words, in the reader's language. Twenty of twenty is never claimed while a case is undetermined.</summary>
public static class OddsWords
{
    /// <summary>The most seeds an undetermined case may fill.</summary>
    public const int Cap = 19;

    /// <summary>The seeds to fill: <paramref name="inTwenty"/> kept between 0 and 19, or 20 once determined.</summary>
    public static int Shown(int inTwenty, bool determined) => Math.Clamp(inTwenty, 0, determined ? SeedShape.Whole : Cap);

    /// <summary>"17 in 20"; below half a seed "under 1 in 20"; above the cap "more than 19 in 20".</summary>
    public static string For(int inTwenty, bool determined = false) => inTwenty switch
    {
        <= 0 => Say["under 1 in 20"],
        > Cap when !determined => Say["more than 19 in 20"],
        _ => Say[$"{Math.Min(inTwenty, SeedShape.Whole)} in 20"],
    };

    /// <summary>A share of one as per cent with one decimal and a no-break space: "84.6 %".</summary>
    public static string Percent(double share) => share switch
    {
        > 0 and < 0.0005 => Say["under 0.1\u00a0%"],
        > 0.9995 and < 1 => Say["over 99.9\u00a0%"],
        _ => Say[$"{share * 100:0.0}\u00a0%"],
    };
}
