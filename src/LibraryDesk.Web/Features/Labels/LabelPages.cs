namespace LibraryDesk.Web.Features.Labels;

/// <summary>One page of a print.</summary>
/// <param name="Labels">One for each place from the first on; null for a place left free.</param>
/// <param name="Stakes">Stakes below them.</param>
public sealed record LabelPage<T>(IReadOnlyList<T?> Labels, IReadOnlyList<T> Stakes)
    where T : class;

/// <summary>Lays labels and stakes out on pages.</summary>
public static class LabelPages
{
    /// <param name="format">The paper and its grid.</param>
    /// <param name="labels">Labels, in order.</param>
    /// <param name="stakes">Stakes, in order; dropped where the format has none.</param>
    /// <param name="startAt">The first free place of a sheet already begun, from 1; out of range counts as the nearest place.</param>
    public static IReadOnlyList<LabelPage<T>> Lay<T>(LabelFormat format, IReadOnlyList<T> labels, IReadOnlyList<T> stakes, int startAt)
        where T : class
    {
        var pages = new List<LabelPage<T>>();
        var labelPages = format.LabelsOnPage == 0 || labels.Count == 0 ? [] : Places(format, labels, startAt).Chunk(format.LabelsOnPage).ToArray();
        var stakePages = format.Stakes == 0 ? [] : stakes.Chunk(format.Stakes).ToArray();
        for (var page = 0; page < Math.Max(labelPages.Length, stakePages.Length); page++)
        {
            pages.Add(new(page < labelPages.Length ? labelPages[page] : [], page < stakePages.Length ? stakePages[page] : []));
        }
        return pages;
    }

    private static IEnumerable<T?> Places<T>(LabelFormat format, IReadOnlyList<T> labels, int startAt)
        where T : class => Enumerable.Repeat<T?>(null, Math.Clamp(startAt, 1, format.LabelsOnPage) - 1).Concat(labels);
}
