using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Population;

/// <summary>
/// The effective size of one generation, and what it keeps of the heterozygosity. N is the number of plants that seed was saved from, never of plants
/// grown. Sources: Crow &amp; Kimura 1970, An Introduction to Population Genetics Theory (Ne from the variance of contributions); Ne with
/// partial selfing, Pollak 1987 (cited from memory).
/// </summary>
public static class EffectiveSize
{
    /// <summary>Ne = (4N - 2) / (Vk + 2).</summary>
    /// <param name="plants">Plants saved from, 1 or more.</param>
    /// <param name="varianceOfContributions">Variance of the number of gametes each gave, 0 or more: 0 when the same amount is taken from each, about 2 at random.</param>
    public static double FromVariance(int plants, double varianceOfContributions)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(plants, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(varianceOfContributions);
        return ((4.0 * plants) - 2) / (varianceOfContributions + 2);
    }

    /// <summary>The variance that a manner of harvest stands for. Bulked seed is reckoned as at random; where plants differ much in yield, Ne is less.</summary>
    public static double VarianceOf(HarvestManner manner) => manner == HarvestManner.SameFromEach ? 0 : 2;

    /// <summary>Ne with partial selfing: Ne / (1 + F), F = s / (2 - s).</summary>
    /// <param name="effectiveSize">Ne without selfing.</param>
    /// <param name="selfedShare">The share s of seed that is selfed, 0 to 1.</param>
    public static double WithSelfing(double effectiveSize, double selfedShare)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(selfedShare);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(selfedShare, 1);
        return effectiveSize / (1 + (selfedShare / (2 - selfedShare)));
    }

    /// <summary>Ne of unequal numbers of mothers and fathers, where a species has them: 4mf / (m + f) (Wright 1931).</summary>
    public static double OfSexes(double mothers, double fathers)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mothers);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(fathers);
        return 4 * mothers * fathers / (mothers + fathers);
    }

    /// <summary>The part of the heterozygosity that a line of generations keeps: the product of 1 - 1/(2Ne). 1 for no generation.</summary>
    public static double HeterozygosityKept(IEnumerable<double> effectiveSizes)
    {
        ArgumentNullException.ThrowIfNull(effectiveSizes);
        return effectiveSizes.Aggregate(1.0, (kept, size) => kept * (1 - (1 / (2 * Math.Max(0.5, size)))));
    }

    /// <summary>The one size that would drift alike: the harmonic mean. Null for no generation.</summary>
    public static double? HarmonicMean(IReadOnlyCollection<double> effectiveSizes)
    {
        ArgumentNullException.ThrowIfNull(effectiveSizes);
        return effectiveSizes.Count == 0 ? null : effectiveSizes.Count / effectiveSizes.Sum(size => 1 / size);
    }

    /// <summary>Inbreeding after t generations of constant size: 1 - (1 - 1/(2N))^t.</summary>
    public static double InbreedingAfter(double size, int generations)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(size);
        ArgumentOutOfRangeException.ThrowIfNegative(generations);
        return 1 - Math.Pow(1 - (1 / (2 * size)), generations);
    }
}
