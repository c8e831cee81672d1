namespace LibraryDesk.Web.Features.Labels;

/// <summary>A paper with its grid of labels. Millimetres.</summary>
/// <param name="Id">The value in addresses and the class of the sheet.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Height">Height of the paper.</param>
/// <param name="Top">White above the first label.</param>
/// <param name="Foot">Kept free below for the scale line.</param>
/// <param name="LabelHeight">Height of one label.</param>
/// <param name="Rows">Rows of labels a full page has.</param>
public sealed record LabelPaper(string Id, string Name, double Height, double Top, double Foot, double LabelHeight, int Rows)
{
    /// <summary>Labels side by side.</summary>
    public const int Columns = 2;

    /// <summary>Height of a plant stake.</summary>
    public const double StakeHeight = 21;

    /// <summary>White between labels and stakes.</summary>
    public const double Gap = 5;

    // Label sizes are chosen to be cut, or to fit common sheets of 99.1 x 38.1 mm and 101.6 x 36 mm (from memory).
    public static LabelPaper A4 { get; } = new("a4", "A4", 297, 20, 14, 38.1, 6);

    public static LabelPaper Letter { get; } = new("letter", "US Letter", 279.4, 16, 14, 36, 6);

    public static LabelPaper Of(string? id) => id == Letter.Id ? Letter : A4;

    public int LabelsOnPage => Rows * Columns;

    /// <summary>Stakes that fit under a number of rows of labels.</summary>
    public int StakesUnder(int rows)
    {
        var room = Height - Top - Foot - (rows * LabelHeight) - (rows > 0 ? Gap : 0);
        return Math.Max(0, (int)(room / StakeHeight));
    }
}

/// <summary>One page of a print.</summary>
/// <param name="Labels">Labels from the first place on; null for a place that was used before.</param>
/// <param name="Stakes">Stakes below them.</param>
public sealed record LabelPage<T>(IReadOnlyList<T?> Labels, IReadOnlyList<T> Stakes)
    where T : class;

/// <summary>Lays labels and stakes out on pages.</summary>
public static class LabelSheet
{
    /// <param name="paper">The paper.</param>
    /// <param name="labels">Labels, in order.</param>
    /// <param name="stakes">Stakes, in order; they follow the labels, on the same page where there is room.</param>
    /// <param name="startAt">The first free place of a sheet already begun, from 1.</param>
    public static IReadOnlyList<LabelPage<T>> Lay<T>(LabelPaper paper, IReadOnlyList<T> labels, IReadOnlyList<T> stakes, int startAt)
        where T : class
    {
        var used = labels.Count == 0 ? 0 : Math.Clamp(startAt - 1, 0, paper.LabelsOnPage - 1);
        var places = Enumerable.Repeat<T?>(null, used).Concat(labels).ToArray();
        var pages = new List<LabelPage<T>>();
        foreach (var chunk in places.Chunk(paper.LabelsOnPage)) pages.Add(new(chunk, []));

        var waiting = stakes.ToArray();
        if (pages.Count > 0)
        {
            var rows = (pages[^1].Labels.Count + LabelPaper.Columns - 1) / LabelPaper.Columns;
            var under = Math.Min(waiting.Length, paper.StakesUnder(rows));
            pages[^1] = pages[^1] with { Stakes = waiting[..under] };
            waiting = waiting[under..];
        }
        foreach (var chunk in waiting.Chunk(Math.Max(1, paper.StakesUnder(0)))) pages.Add(new([], chunk));
        return pages;
    }
}
