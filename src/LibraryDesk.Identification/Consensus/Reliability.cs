using LibraryDesk.Identification.Record;

namespace LibraryDesk.Identification.Consensus;

/// <summary>How reliable one person's votes are, as far as all votes together tell.</summary>
/// <param name="Votes">Items the person voted on.</param>
/// <param name="Right">How many of them were right, in expectation over what the items may have been.</param>
/// <param name="Share">Reliability, 0 to 1: the mean of the law after the votes.</param>
/// <param name="Low">Lower end of its middle 95 %.</param>
/// <param name="High">Upper end of it.</param>
public sealed record RaterReliability(int Votes, double Right, double Share, double Low, double High);

/// <summary>
/// Reliability of people who judged the same items, by Dawid and Skene (see <see cref="DawidSkene"/>) with a prior, and how sure it is.
/// </summary>
public static class Reliability
{
    /// <summary>Right votes that everybody is taken to have given before any count. The desk's own setting, no source: four right in five.</summary>
    public const double RightPrior = 4;

    /// <summary>Wrong votes that everybody is taken to have given before any count.</summary>
    public const double WrongPrior = 1;

    /// <summary>Reliability of each person, in the order of their numbers.</summary>
    /// <returns>Null when there are no votes, or a vote lies outside the given numbers.</returns>
    public static IReadOnlyList<RaterReliability>? Of(IReadOnlyList<Vote> votes, int items, int raters, int classes)
    {
        ArgumentNullException.ThrowIfNull(votes);
        var wrongEach = WrongPrior / Math.Max(1, classes - 1);
        if (DawidSkene.Fit(votes, items, raters, classes, RightPrior, wrongEach, tolerance: 1e-8) is not { } fit) return null;
        var given = new int[raters];
        var right = new double[raters];
        foreach (var vote in votes)
        {
            given[vote.Rater]++;
            right[vote.Rater] += fit.ItemPosteriors[vote.Item][vote.Class];
        }

        return [.. Enumerable.Range(0, raters).Select(r =>
        {
            var (a, b) = (RightPrior + right[r], WrongPrior + Math.Max(0, given[r] - right[r]));
            var (low, high) = BetaInterval.Of(a, b);
            return new RaterReliability(given[r], right[r], a / (a + b), low, high);
        })];
    }
}
