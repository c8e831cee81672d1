namespace LibraryDesk.Web.Shared.Odds;

/// <summary>How large the twenty seeds are drawn. All shrink with the space there is.</summary>
public enum SeedSize
{
    /// <summary>14 px a seed, for candidates in a list.</summary>
    Normal,
    /// <summary>21 px a seed, for the lead candidate.</summary>
    Large,
    /// <summary>10 px a seed, for lines of a list.</summary>
    Small,
    /// <summary>8 px a seed, for the thumb bar.</summary>
    Tiny,
}
