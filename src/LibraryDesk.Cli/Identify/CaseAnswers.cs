using System.Globalization;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Cli.Identify;

/// <summary>Joins the rows of one case to answers: rows of one trait, person and look are "either of these".</summary>
internal static class CaseAnswers
{
    /// <summary>The answers of a case; null after a fault was told.</summary>
    public static List<Answer>? Of(CompiledGuide guide, AnswerCase rows, Action<string>? fault)
    {
        var answers = new List<Answer>(rows.Rows.Count);
        var joined = new List<AnswerRow>();
        var taken = new bool[rows.Rows.Count];
        for (var i = 0; i < taken.Length; i++)
        {
            var first = rows.Rows[i];
            // A case filed without any answer yet stands as a row with neither trait nor state.
            if (taken[i] || (first.Trait.Length == 0 && first.State.Length == 0)) continue;
            joined.Clear();
            for (var j = i; j < taken.Length; j++)
            {
                var row = rows.Rows[j];
                if (taken[j] || row.Trait != first.Trait || row.Person != first.Person || row.Look != first.Look) continue;
                taken[j] = true;
                joined.Add(row);
                if (row.Sure == first.Sure) continue;
                fault?.Invoke($"row {row.Row}: contradicts row {first.Row}: \"either of these\" is one answer and has one sureness");
                return null;
            }

            answers.Add(Join(guide.FindTrait(first.Trait), joined) with { Sure = first.Sure, Person = first.Person, Look = first.Look, Row = first.Row });
        }

        return answers;
    }

    private static Answer Join(Trait? trait, List<AnswerRow> rows)
    {
        if (trait?.Kind == TraitKind.Measured && Bands(rows) is { } bands) return Answer.MeasuredAs(trait.Id, bands);
        return Answer.Of(rows[0].Trait, rows.Count == 1 ? rows[0].State.Length == 0 ? [] : [rows[0].State] : [.. rows.Select(r => r.State).Distinct()]);
    }

    private static Band[]? Bands(List<AnswerRow> rows)
    {
        var bands = new Band[rows.Count];
        for (var i = 0; i < bands.Length; i++)
        {
            if (ReadBand(rows[i].State) is not { } band) return null;
            bands[i] = band;
        }

        return bands;
    }

    private static Band? ReadBand(string text)
    {
        var dots = text.IndexOf("..", StringComparison.Ordinal);
        if (dots < 0) return Number(text) is { } value ? new Band(value, value) : null;
        return Number(text.AsSpan(0, dots)) is { } low && Number(text.AsSpan(dots + 2)) is { } high ? new Band(low, high) : null;
    }

    private static double? Number(ReadOnlySpan<char> text) =>
        double.TryParse(text.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value : null;
}
