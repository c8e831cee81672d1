using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Lineage;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>An answer as typed; kept as typed, so that a refusal loses nothing.</summary>
internal sealed class AnswerForm
{
    public const string Cant = "cant-see-yet";
    public const string Unsure = "not-sure";

    public string? Trait { get; set; }

    public List<string>? States { get; set; }

    public string? Low { get; set; }

    public string? High { get; set; }

    public string? Sure { get; set; }

    /// <summary>Which button sent it: one of the two above, or the answer itself.</summary>
    public string? Say { get; set; }

    /// <summary>The answer, or why what was typed is none.</summary>
    public Outcome<GivenAnswer> Read(Trait trait)
    {
        if (Say == Cant) return GivenAnswer.CantSeeYet(trait.Id);
        if (Say == Unsure) return GivenAnswer.NotSure(trait.Id);
        var sure = Sure ?? "sure";
        if (trait.Kind != TraitKind.Measured) return new GivenAnswer(trait.Id, AnswerKind.States, States ?? [], Sureness: sure);
        if (!Number(Low, trait.Unit, out var low)) return NotANumber(Low);
        if (!Number(High, trait.Unit, out var high)) return NotANumber(High);
        return new GivenAnswer(trait.Id, AnswerKind.Measure, [], low, high, sure);
    }

    private static Refusal NotANumber(string? typed) => new(SaveAnswer.AnswerCode, $"\"{typed}\" is not a number. Type it in digits, such as 12 or 12.5.");

    private static bool Number(string? typed, string? unit, out double? value)
    {
        value = null;
        if (string.IsNullOrWhiteSpace(typed)) return true;
        if (!Measures.TryRead(typed, unit, out var number)) return false;
        value = number;
        return true;
    }
}
