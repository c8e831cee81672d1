using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>Which question stands where in a look.</summary>
internal static class Questioning
{
    /// <summary>A look expected to tell less than this many bits moves no odds that anybody would notice.</summary>
    public const double LeastBits = 0.02;

    /// <summary>Questions worth asking now that were not put at this look yet, best first.</summary>
    public static IReadOnlyList<NextLook> Open(CaseView view)
    {
        var put = view.Latest.Answers.Where(a => !a.ByDesk).Select(a => a.TraitId).ToHashSet();
        return view.Ranking is null ? [] : [.. view.Ranking.Plan.Now.Where(look => look.Bits >= LeastBits && !put.Contains(look.Trait))];
    }

    /// <summary>The trait put before another at this look, or the last one; null at the first question.</summary>
    public static string? Before(CaseView view, string trait)
    {
        var put = view.Latest.Answers.Where(a => !a.ByDesk).Select(a => a.TraitId).Distinct().ToList();
        var at = put.IndexOf(trait);
        return at < 0 ? put.LastOrDefault() : at == 0 ? null : put[at - 1];
    }

    /// <summary>The answer that stands for a trait at the latest look; null without one.</summary>
    public static AnswerRow? Standing(CaseView view, string trait) =>
        view.Latest.Answers.LastOrDefault(a => !a.ByDesk && a.TraitId == trait);

    public static Caution? CautionOf(CropGuide guide, string trait) =>
        guide.FindTrait(trait)?.Caution is { } id ? guide.Cautions.FirstOrDefault(c => c.Id == id) : null;
}
