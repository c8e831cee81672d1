using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Numbers;

namespace LibraryDesk.Lineage.Keeping;

/// <summary>A share with its exact bounds.</summary>
/// <param name="Low">Lower bound, 0 to 1.</param>
/// <param name="Share">The share seen, 0 to 1.</param>
/// <param name="High">Upper bound, 0 to 1.</param>
public readonly record struct ShareInterval(double Low, double Share, double High);

/// <summary>What a germination test tells.</summary>
public static class Germination
{
    /// <summary>The exact interval (Clopper &amp; Pearson 1934, Biometrika 26:404-413) for m germinated of n sown.</summary>
    /// <param name="sown">1 or more.</param>
    /// <param name="germinated">0 to <paramref name="sown"/>.</param>
    /// <param name="confidence">Share of such intervals that hold the truth, 0.95 by default.</param>
    public static ShareInterval Interval(int sown, int germinated, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(sown, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(germinated);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(germinated, sown);
        var tail = (1 - confidence) / 2;
        var low = germinated == 0 ? 0 : BetaDistribution.Quantile(tail, germinated, sown - germinated + 1);
        var high = germinated == sown ? 1 : BetaDistribution.Quantile(1 - tail, germinated + 1, sown - germinated);
        return new(low, (double)germinated / sown, high);
    }

    /// <summary>
    /// The largest difference, in per cent, that four replicates of 100 seeds show by chance at 2.5 %: 3.984 x root of p(100 - p)/100, where
    /// 3.984 is the studentised range (0.975; 4, infinity). ISTA prints whole numbers of it (Table 5B, from memory); at 99 % it prints 5.
    /// </summary>
    /// <param name="meanPercent">Mean germination in per cent, 0 to 100.</param>
    public static int ReplicateTolerance(double meanPercent)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(meanPercent);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(meanPercent, 100);

        // Tables go by whole per cent, and 95 % has the tolerance of 6 %.
        var percent = Math.Round(meanPercent, MidpointRounding.AwayFromZero);
        var rare = Math.Min(percent, 101 - percent);
        if (rare <= 2) return rare <= 0 ? 0 : 4 + (int)rare;
        return (int)Math.Round(3.984 * Math.Sqrt(rare * (100 - rare) / 100), MidpointRounding.AwayFromZero);
    }

    /// <summary>True when the replicates of a test differ no more than chance lets them; null where no published tolerance applies (four replicates of 100 are what the table is for).</summary>
    public static bool? AreReplicatesAlike(IReadOnlyList<TestReplicate> replicates)
    {
        ArgumentNullException.ThrowIfNull(replicates);
        if (replicates.Count != 4 || replicates.Any(replicate => replicate.Sown != 100)) return null;
        var spread = replicates.Max(replicate => replicate.Germinated) - replicates.Min(replicate => replicate.Germinated);
        return spread <= ReplicateTolerance(replicates.Average(replicate => replicate.Germinated));
    }
}
