using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Shared.Forms;
using static LibraryDesk.Web.Features.GuideEditor.GuideEditorText;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>One figure of a guide as its form posts it. Numbers are texts, so that a slip comes back as it was typed.</summary>
public sealed class CellFields
{
    /// <summary>In place of a word: the share was counted.</summary>
    public const string Counted = "counted";

    /// <summary>The draft's revision as the form showed it.</summary>
    public long Revision { get; set; }

    /// <summary>What the figure said when the form was shown, see <see cref="PrintOf"/>: its place may have shifted since. Empty for a new one.</summary>
    public string? Was { get; set; }
    /// <summary>State id.</summary>
    public string? State { get; set; }
    /// <summary>Lower end of a measured band.</summary>
    public string? Low { get; set; }
    /// <summary>Upper end of a measured band.</summary>
    public string? High { get; set; }

    /// <summary>A word of the guides, or <see cref="Counted"/>.</summary>
    public string? Word { get; set; }

    /// <summary>Per cent, where counted.</summary>
    public string? Share { get; set; }

    /// <summary>Plants counted.</summary>
    public string? Plants { get; set; }
    /// <summary>How the source was read.</summary>
    public string? Basis { get; set; }
    /// <summary>Source id.</summary>
    public string? Source { get; set; }

    /// <summary>The form of what stands in the draft.</summary>
    public static CellFields From(Cell? cell, long revision) => new()
    {
        Revision = revision,
        Was = cell is null ? null : PrintOf(cell),
        State = cell?.State,
        Low = Text(cell?.Low),
        High = Text(cell?.High),
        Word = cell is null ? null : cell.Word?.ToString() ?? Counted,
        Share = Text(cell?.P * 100),
        Plants = cell?.N?.ToString(CultureInfo.InvariantCulture),
        Basis = cell?.Basis,
        Source = cell?.Source,
    };

    /// <summary>A short mark of all that a cell says, the line aside: two cells have the same only if they say the same.</summary>
    public static string PrintOf(Cell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes((cell with { Line = 0 }).ToString())))[..24];
    }

    /// <summary>The cell, or what must be put right first.</summary>
    public (Cell? Cell, IReadOnlyList<FormFault> Faults) Read(string of, Trait trait)
    {
        var faults = new List<FormFault>();
        var isMeasured = trait.Kind == TraitKind.Measured;
        if (!isMeasured && trait.FindState(State ?? "") is null) faults.Add(new FormFault("state", Say["Choose the state that the figure is about."]));
        var (low, high) = isMeasured ? (Number(Low, "low", faults), Number(High, "high", faults)) : (null, null);
        if (isMeasured && low is null && high is null && faults.Count == 0) faults.Add(new FormFault("low", Say["Give the lower end, the upper end or both."]));
        if (low >= high) faults.Add(new FormFault("high", Say["The upper end must be above the lower one."]));
        var isCounted = Word == Counted;
        var word = Enum.TryParse<Word>(Word, out var known) && Enum.IsDefined(known) ? known : (Word?)null;
        if (!isCounted && word is null) faults.Add(new FormFault("word", Say["Say how often: a word of the source, or a counted share."]));
        var share = isCounted ? Number(Share, "share", faults) : null;
        if (isCounted && share is not (>= 0 and <= 100)) faults.Add(new FormFault("share", Say["A counted share lies between 0 and 100 per cent."]));
        var plants = isCounted ? Number(Plants, "plants", faults) : null;
        if (plants is { } n && (n < 1 || n != Math.Floor(n) || n > 1_000_000)) faults.Add(new FormFault("plants", Say["The number of plants is a whole number above 0."]));
        if (string.IsNullOrWhiteSpace(Source)) faults.Add(new FormFault("source", Say["Every figure has a source. Add it to the sources first if it is not in the list."]));
        if (faults.Count > 0) return (null, faults);
        return (new Cell(of, trait.Id, isMeasured ? null : State, low, high, word, share / 100, (int?)plants, Blank(Basis), Source!, 0), []);
    }

    private static double? Number(string? text, string field, List<FormFault> faults)
    {
        if (string.IsNullOrWhiteSpace(text)) return null;
        if (double.TryParse(text.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) && number >= 0) return number;
        faults.Add(new FormFault(field, Say[$"“{text}” is no number that can stand here. Write it like 12.5."]));
        return null;
    }

    private static string? Text(double? number) => number is { } value ? Math.Round(value, 6).ToString(CultureInfo.InvariantCulture) : null;

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
