using static LibraryDesk.Web.Features.Labels.LabelsText;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>A paper and the grid of labels on it, in millimetres. Sizes of ready-cut sheets are from memory: the test print shows whether they fit.</summary>
/// <param name="Id">The value in addresses.</param>
/// <param name="Paper">"A4" or "US Letter".</param>
/// <param name="PageWidth">Of the paper.</param>
/// <param name="PageHeight">Of the paper.</param>
/// <param name="Top">From the paper's edge to the first label.</param>
/// <param name="Left">From the paper's edge to the first label.</param>
/// <param name="Columns">Labels side by side; 0 for stakes alone.</param>
/// <param name="Rows">Labels one under the other.</param>
/// <param name="LabelWidth">Of one label.</param>
/// <param name="LabelHeight">Of one label.</param>
/// <param name="ColumnGap">White between columns.</param>
/// <param name="Stakes">Plant stakes under the labels.</param>
/// <param name="IsCut">True for plain paper that is cut along printed dashes; false for sheets that come cut.</param>
public sealed record LabelFormat(
    string Id, string Paper, double PageWidth, double PageHeight, double Top, double Left,
    int Columns, int Rows, double LabelWidth, double LabelHeight, double ColumnGap, int Stakes, bool IsCut)
{
    /// <summary>Height of a stake: a code of 21 mm, its quiet zone inside, and the cut.</summary>
    public const double StakeHeight = 22;

    /// <summary>White between labels and stakes.</summary>
    public const double StakeGap = 5;

    private const string A4 = "A4";
    private const string Letter = "US Letter";

    /// <summary>All formats, A4 first.</summary>
    public static IReadOnlyList<LabelFormat> All { get; } =
    [
        new("a4-cut", A4, 210, 297, 14, 5.9, 2, 4, 99.1, 38.1, 0, 4, true),
        new("a4-14", A4, 210, 297, 15.15, 4.65, 2, 7, 99.1, 38.1, 2.5, 0, false),
        new("a4-8", A4, 210, 297, 13.1, 4.65, 2, 4, 99.1, 67.7, 2.5, 0, false),
        new("a4-stakes", A4, 210, 297, 14, 5.9, 0, 0, 0, 0, 0, 12, true),
        new("letter-cut", Letter, 215.9, 279.4, 11, 6.35, 2, 4, 101.6, 38.1, 0, 4, true),
        new("letter-14", Letter, 215.9, 279.4, 21.17, 3.97, 2, 7, 101.6, 33.87, 4.76, 0, false),
        new("letter-10", Letter, 215.9, 279.4, 12.7, 3.97, 2, 5, 101.6, 50.8, 4.76, 0, false),
        new("letter-stakes", Letter, 215.9, 279.4, 14, 6.35, 0, 0, 0, 0, 0, 11, true),
    ];

    /// <summary>The format of that id; the first one for any other text.</summary>
    public static LabelFormat Of(string? id) => All.FirstOrDefault(format => format.Id == id) ?? All[0];

    /// <summary>What it is, for the list, in the reader's language.</summary>
    public string Name => Id switch
    {
        "a4-cut" => Say["A4, plain: 8 labels and 4 stakes, to cut"],
        "a4-14" => Say["A4 label sheet: 14 of 99.1 × 38.1 mm"],
        "a4-8" => Say["A4 label sheet: 8 of 99.1 × 67.7 mm"],
        "a4-stakes" => Say["A4, plain: 12 stakes, to cut"],
        "letter-cut" => Say["US Letter, plain: 8 labels and 4 stakes, to cut"],
        "letter-14" => Say["US Letter label sheet: 14 of 4 × 1 1/3 in"],
        "letter-10" => Say["US Letter label sheet: 10 of 4 × 2 in"],
        _ => Say["US Letter, plain: 11 stakes, to cut"],
    };

    /// <summary>Places for labels on a page.</summary>
    public int LabelsOnPage => Columns * Rows;

    /// <summary>Width of the printed block.</summary>
    public double BlockWidth => Columns > 0 ? (Columns * LabelWidth) + ((Columns - 1) * ColumnGap) : PageWidth - (2 * Left);
}
