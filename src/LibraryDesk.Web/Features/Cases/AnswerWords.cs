using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Identification.Guides;

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
            AnswerKind.CantSeeYet => "can’t see it yet",
            AnswerKind.NotSure => "not sure",
            AnswerKind.Measure => Measure(answer, trait),
            _ => string.Join(" or ", answer.States.Split('|').Select(s => Lower(trait?.FindState(s)?.Name ?? s))),
        };
        return answer.Kind is AnswerKind.CantSeeYet or AnswerKind.NotSure ? said : said + answer.Sureness switch { "fairly" => " (fairly clear)", "faint" => " (faint)", _ => "" };
    }

    /// <summary>All answers of a look in one line.</summary>
    public static string Sentence(LookView look, CropGuide guide)
    {
        var said = look.Answers.Where(a => a.Kind is AnswerKind.States or AnswerKind.Measure).Take(8).Select(a => $"{TraitName(a, guide)}: {Said(a, guide)}").ToList();
        var open = look.Answers.Count(a => a.Kind is AnswerKind.CantSeeYet or AnswerKind.NotSure);
        var text = string.Join("; ", said);
        if (open == 0) return text.Length == 0 ? "" : text + ".";
        var left = string.Create(CultureInfo.InvariantCulture, $"{open} left open");
        return text.Length == 0 ? left + "." : $"{text}; {left}.";
    }

    private static string Measure(AnswerRow answer, Trait? trait) => answer.Low == answer.High
        ? string.Create(CultureInfo.InvariantCulture, $"{answer.Low:0.##} {trait?.Unit}")
        : string.Create(CultureInfo.InvariantCulture, $"{answer.Low:0.##} to {answer.High:0.##} {trait?.Unit}");

    private static string Lower(string text) => text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text[1..] : text;
}
