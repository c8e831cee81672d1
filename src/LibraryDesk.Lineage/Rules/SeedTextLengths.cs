namespace LibraryDesk.Lineage.Rules;

/// <summary>How many characters texts about seed may have, for the rules and for the tables.</summary>
public static class SeedTextLengths
{
    /// <summary>Names of varieties, places, libraries and donors.</summary>
    public const int Name = 160;

    /// <summary>Ids of species and guide versions.</summary>
    public const int Species = 80;

    /// <summary>Reasons and other words of the ledger.</summary>
    public const int Words = 300;
}
