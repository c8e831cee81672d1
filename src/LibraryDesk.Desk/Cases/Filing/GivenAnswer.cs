using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>An answer as it came from a form.</summary>
/// <param name="States">State ids; several mean "either of these". Empty unless <paramref name="Kind"/> is States.</param>
/// <param name="Low">In the trait's unit; null unless a measure.</param>
/// <param name="High">Null where one number was given.</param>
/// <param name="Sureness">sure, fairly or faint.</param>
public sealed record GivenAnswer(
    string TraitId, AnswerKind Kind, IReadOnlyList<string> States, double? Low = null, double? High = null, string Sureness = "sure")
{
    public static GivenAnswer Of(string trait, params IReadOnlyList<string> states) => new(trait, AnswerKind.States, states);

    public static GivenAnswer Measured(string trait, double low, double? high = null) => new(trait, AnswerKind.Measure, [], low, high);

    public static GivenAnswer NotSure(string trait) => new(trait, AnswerKind.NotSure, []);

    public static GivenAnswer CantSeeYet(string trait) => new(trait, AnswerKind.CantSeeYet, []);
}
