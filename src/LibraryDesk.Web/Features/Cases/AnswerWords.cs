using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using static LibraryDesk.Web.Features.Cases.CasesText;

namespace LibraryDesk.Web.Features.Cases;

/// <summary>Answers in words.</summary>
internal static class AnswerWords
{
    public static string TraitName(AnswerRow answer, CropGuide guide) => guide.FindTrait(answer.TraitId)?.Name ?? answer.TraitId;

    /// <summary>What was said, with how clear it was.</summary>
    public static string Said(AnswerRow answer, CropGuide guide)
    {
        var trait = guide.FindTrait(answer.TraitId);
        var said = answer.Kind switch
        {
            AnswerKind.CantSeeYet => Say["can’t see it yet"],
            AnswerKind.NotSure => Say["not sure"],
            AnswerKind.Measure => Measure(answer, trait),
            _ => Or(answer.States.Split('|').Select(s => Lower(trait?.FindState(s)?.Name ?? s))),
        };
        if (answer.Kind is AnswerKind.CantSeeYet or AnswerKind.NotSure) return said;
        return answer.Sureness switch { "fairly" => Say[$"{said} (fairly clear)"], "faint" => Say[$"{said} (faint)"], _ => said };
    }

    /// <summary>One of several, as "red or orange".</summary>
    public static string Or(IEnumerable<string> several) => several.Aggregate((before, next) => Say[$"{before} or {next}"]);

    /// <summary>All answers of a look in one line.</summary>
    public static string Sentence(LookView look, CropGuide guide)
    {
        var said = look.Answers.Where(a => a.Kind is AnswerKind.States or AnswerKind.Measure).Select(a => $"{TraitName(a, guide)}: {Said(a, guide)}").Distinct().Take(8).ToList();
        var open = look.Answers.Count(a => a.Kind is AnswerKind.CantSeeYet or AnswerKind.NotSure);
        var text = string.Join("; ", said);
        if (open == 0) return text.Length == 0 ? "" : text + ".";
        var left = Say[$"{open} left open"];
        return text.Length == 0 ? left + "." : $"{text}; {left}.";
    }

    private static string Measure(AnswerRow answer, Trait? trait) => answer.Low == answer.High
        ? string.Create(CultureInfo.CurrentCulture, $"{answer.Low:0.##} {Measures.Unit(trait?.Unit, answer.Low ?? 0)}")
        : Say[$"{answer.Low:0.##} to {answer.High:0.##} {Measures.Unit(trait?.Unit, answer.Low ?? 0, answer.High)}"];

    private static string Lower(string text) => text.Length > 1 && (char.IsLower(text[1]) || text[1] == ' ') ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
