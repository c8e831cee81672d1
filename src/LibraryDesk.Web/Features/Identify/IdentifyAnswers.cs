using System.Text.Json;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Web.Features.Identify;

/// <summary>Joins the rows of a request to answers: rows of one trait, person and look are "either of these".</summary>
internal static class IdentifyAnswers
{
    /// <summary>The answers; what cannot be read is put into <paramref name="faults"/> by the place of its row, from 0.</summary>
    public static List<Answer> Read(CompiledGuide guide, IReadOnlyList<IdentifyAnswer> rows, Dictionary<int, string> faults)
    {
        var answers = new List<Answer>();
        var joined = rows.Select((row, index) => (Row: row, Index: index)).GroupBy(r => (r.Row.Trait, Person: r.Row.Person ?? "", Look: r.Row.Look ?? ""));
        foreach (var group in joined)
        {
            var (first, index) = group.First();
            if (!CaseEvidence.Sureness.TryGetValue(first.Sure ?? "sure", out var sure))
            {
                faults[index] = $"sure is \"{first.Sure}\"; it must be sure, fairly or faint.";
                continue;
            }
            if (group.FirstOrDefault(r => (r.Row.Sure ?? "sure") != (first.Sure ?? "sure")) is { Row: not null } other)
            {
                faults[other.Index] = "Rows of one trait, person and look are one answer, \"either of these\", and have one sureness.";
                continue;
            }
            if (AnswerOf(guide, [.. group], faults) is { } answer)
                answers.Add(answer with { Sure = sure, Person = group.Key.Person, Look = group.Key.Look, Row = index + 1 });
        }
        return answers;
    }

    private static Answer? AnswerOf(CompiledGuide guide, IReadOnlyList<(IdentifyAnswer Row, int Index)> rows, Dictionary<int, string> faults)
    {
        var trait = rows[0].Row.Trait ?? "";
        if (guide.Guide.FindTrait(trait)?.Kind != TraitKind.Measured)
        {
            foreach (var (row, index) in rows.Where(r => r.Row.State is null)) faults[index] = $"\"{trait}\" needs a state.";
            return rows.All(r => r.Row.State is not null) ? Answer.Of(trait, [.. rows.Select(r => r.Row.State!).Distinct()]) : null;
        }
        var bands = new List<Band>();
        foreach (var (row, index) in rows)
        {
            if (BandOf(row) is { } band) bands.Add(band);
            else faults[index] = $"\"{trait}\" is measured: give value as a number such as 12, or a range such as \"12..15\".";
        }
        return bands.Count == rows.Count ? Answer.MeasuredAs(trait, bands) : null;
    }

    private static Band? BandOf(IdentifyAnswer row)
    {
        if (row.Value is { ValueKind: JsonValueKind.Number } number) return number.TryGetDouble(out var value) ? new Band(value, value) : null;
        var text = row.Value is { ValueKind: JsonValueKind.String } typed ? typed.GetString() : row.State;
        return text is null ? null : Band.Parse(text);
    }
}
