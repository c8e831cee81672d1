using System.Globalization;

namespace LibraryDesk.Identification.Odds;

/// <summary>Odds as n in 20: whole seeds out of twenty. While a plant is undetermined nothing is 20 in 20.</summary>
public readonly record struct OddsInTwenty
{
    private OddsInTwenty(int seeds, bool isCapped)
    {
        Seeds = seeds;
        IsMoreThanNineteen = isCapped;
    }

    /// <summary>Seeds out of twenty, 0 to 19.</summary>
    public int Seeds { get; }

    /// <summary>True where twenty seeds would have been due; one of them is left unassigned.</summary>
    public bool IsMoreThanNineteen { get; }

    /// <summary>True where not even one seed is due.</summary>
    public bool IsUnderOne => Seeds == 0;

    /// <summary>
    /// Shares twenty seeds by largest remainder (Hamilton's method), ties to the earlier entry. A sole winner keeps 19 and the last seed is unassigned.
    /// </summary>
    /// <param name="probabilities">Probabilities that sum to 1.</param>
    public static OddsInTwenty[] Share(ReadOnlySpan<double> probabilities)
    {
        var odds = new OddsInTwenty[probabilities.Length];
        Share(probabilities, odds);
        return odds;
    }

    /// <summary>The same into <paramref name="odds"/>, which is as long.</summary>
    internal static void Share(ReadOnlySpan<double> probabilities, Span<OddsInTwenty> odds)
    {
        Span<int> seeds = probabilities.Length <= 256 ? stackalloc int[probabilities.Length] : new int[probabilities.Length];
        var left = 20;
        for (var i = 0; i < seeds.Length; i++)
        {
            // The tiny addend keeps 0.35 * 20 from falling to 6.999...
            seeds[i] = Math.Clamp((int)Math.Floor((probabilities[i] * 20) + 1e-9), 0, 20);
            left -= seeds[i];
        }

        for (; left > 0; left--)
        {
            var best = -1;
            for (var i = 0; i < seeds.Length; i++)
            {
                var remainder = (probabilities[i] * 20) - seeds[i];
                if (remainder > 1e-9 && (best < 0 || remainder > (probabilities[best] * 20) - seeds[best] + 1e-12)) best = i;
            }

            if (best < 0) break;
            seeds[best]++;
        }

        for (var i = 0; i < seeds.Length; i++) odds[i] = new OddsInTwenty(Math.Min(19, seeds[i]), seeds[i] >= 20);
    }

    /// <summary>"17 in 20", "under 1 in 20" or "more than 19 in 20".</summary>
    public override string ToString() => IsMoreThanNineteen ? "more than 19 in 20"
        : IsUnderOne ? "under 1 in 20"
        : Seeds.ToString(CultureInfo.InvariantCulture) + " in 20";
}
