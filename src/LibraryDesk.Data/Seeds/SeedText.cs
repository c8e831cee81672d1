using LibraryDesk.Lineage.Rules;

namespace LibraryDesk.Data.Seeds;

/// <summary>How long texts about seed may be, for the tables and for the acts that check them first.</summary>
public static class SeedText
{
    /// <summary>Names of varieties, places, libraries and donors.</summary>
    public const int Name = SeedTextLengths.Name;

    /// <summary>Ids of species and guide versions.</summary>
    public const int Species = SeedTextLengths.Species;

    /// <summary>One word of a closed list.</summary>
    public const int Word = 24;

    /// <summary>How to reach a donor.</summary>
    public const int Contact = 300;

    /// <summary>Reasons.</summary>
    public const int Why = 1000;
}
