using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Cli.Identify;

/// <summary>Joins the rows of one case to answers: rows of one trait, person and look are "either of these".</summary>
internal static class CaseAnswers
{
    /// <summary>Rows one case can hold; the answers they join to have a lower limit of their own.</summary>
    private const int MostRows = 20_000;

    /// <summary>The answers of a case; null after a fault was told.</summary>
    public static List<Answer>? Of(CompiledGuide guide, AnswerCase rows, Action<RowFault>? fault)
    {
        if (rows.Rows.Count > MostRows)
        {
            fault?.Invoke(new RowFault(rows.Rows[MostRows].Row, $"case {rows.Case} has {rows.Rows.Count} rows; {MostRows} is the most. Split the case or leave out repeated looks"));
            return null;
        }

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
                fault?.Invoke(new RowFault(row.Row, $"contradicts row {first.Row}: \"either of these\" is one answer and has one sureness"));
                return null;
            }

            answers.Add(Join(guide.FindTrait(first.Trait), joined));
        }

        return answers;
    }

    private static Answer Join(Trait? trait, List<AnswerRow> rows)
    {
        var first = rows[0];
        IReadOnlyList<Band>? bands = trait?.Kind == TraitKind.Measured ? Bands(rows) : null;
        IReadOnlyList<string> states = bands is not null ? [] : rows.Count > 1 ? [.. rows.Select(r => r.State).Distinct()] : first.State.Length == 0 ? [] : [first.State];
        return Answer.Read(first.Trait, states, bands ?? [], first.Sure, first.Person, first.Look, first.Row);
    }

    private static Band[]? Bands(List<AnswerRow> rows)
    {
        var bands = new Band[rows.Count];
        for (var i = 0; i < bands.Length; i++)
        {
            if (Band.Parse(rows[i].State) is not { } band) return null;
            bands[i] = band;
        }

        return bands;
    }
}
