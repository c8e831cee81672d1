namespace LibraryDesk.Lineage.Population;

/// <summary>Figures from founder contributions and coancestries (Lacy 1989, Zoo Biology 8:111-123).</summary>
public static class FounderFigures
{
    /// <summary>Effective founders: fe = 1 / sum of squared contributions. As many founders of equal contribution would be as diverse.</summary>
    public static double EffectiveFounders(IEnumerable<double> contributions)
    {
        ArgumentNullException.ThrowIfNull(contributions);
        return 1 / contributions.Sum(part => part * part);
    }

    /// <summary>Founder genome equivalents: fg = 1 / (2 x mean coancestry).</summary>
    public static double FounderGenomes(double meanCoancestry)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(meanCoancestry);
        return 1 / (2 * meanCoancestry);
    }
}
