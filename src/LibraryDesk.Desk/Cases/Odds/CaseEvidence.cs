using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Odds;

/// <summary>The answers of a case as the identification core weighs them.</summary>
public static class CaseEvidence
{
    /// <summary>Who answers for the case's owner; desk scores are told apart by person.</summary>
    public const string Owner = "owner";

    /// <summary>The words kept in the database.</summary>
    public static IReadOnlyDictionary<string, Sureness> Sureness { get; } = new Dictionary<string, Sureness>
    {
        ["sure"] = Identification.Answers.Sureness.Sure,
        ["fairly"] = Identification.Answers.Sureness.Fairly,
        ["faint"] = Identification.Answers.Sureness.Faint,
    };

    /// <summary>
    /// Evidence from rows. Answers taken back and answers that say nothing are left out, and so is what this guide version does not
    /// know: another version may have dropped a trait, and that must not make the case unreadable.
    /// </summary>
    public static Evidence Of(CompiledGuide guide, IEnumerable<AnswerRow> rows) => Evidence.OfKnown(guide, AnswersOf(rows));

    /// <summary>Every answer that stands and says something, whatever guide it was given by.</summary>
    public static IReadOnlyList<Answer> AnswersOf(IEnumerable<AnswerRow> rows) =>
        [.. rows
            .Where(row => row.TakenBackAt is null && row.Kind is AnswerKind.States or AnswerKind.Measure)
            .GroupBy(row => (row.TraitId, row.LookId, Person(row)))
            // Two taps in the same moment can leave two rows; the later one is what the person meant.
            .Select(same => same.MaxBy(row => row.Id)!)
            .OrderBy(row => row.Id)
            .Select(AnswerOf)];

    private static string Person(AnswerRow row) => row.ByDesk ? row.PersonId.ToString()! : Owner;

    private static Answer AnswerOf(AnswerRow row)
    {
        var answer = row.Kind == AnswerKind.States
            ? Answer.Of(row.TraitId, row.States.Split('|'))
            : Answer.Between(row.TraitId, row.Low ?? double.NaN, row.High ?? double.NaN);
        return answer with
        {
            Sure = Sureness[row.Sureness],
            Person = Person(row),
            Look = row.LookId.ToString(CultureInfo.InvariantCulture),
        };
    }
}
