namespace LibraryDesk.Identification.Guides;

/// <summary>Puts the texts of a guide that people read into other words. What is reckoned with, and what others cite, stays.</summary>
public static class GuideTranslation
{
    /// <summary>
    /// The same guide with every text for readers put through <paramref name="say"/>: crop, stages, parts, traits with their units and states,
    /// cautions, common names, cards, forms, and what shares rest on. Ids, scientific names, sources, descriptors and the cells are left alone;
    /// the name of "something else" is no scientific name and is put through.
    /// </summary>
    /// <param name="say">Gives the text in other words, or the same text where it knows none. Never called with an empty text.</param>
    public static CropGuide Of(CropGuide guide, Func<string, string> say) => guide with
    {
        IsTranslated = true,
        Crop = say(guide.Crop),
        Stages = [.. guide.Stages.Select(s => s with { Name = say(s.Name) })],
        Parts = [.. guide.Parts.Select(p => p with { Name = say(p.Name) })],
        Traits = [.. guide.Traits.Select(t => Of(t, say))],
        Cautions = [.. guide.Cautions.Select(c => c with { Title = say(c.Title), Text = say(c.Text) })],
        Candidates = [.. guide.Candidates.Select(c => Of(c, say))],
    };

    private static Trait Of(Trait trait, Func<string, string> say) => trait with
    {
        Name = say(trait.Name),
        Question = OrNone(trait.Question, say) ?? "",
        Hint = OrNone(trait.Hint, say),
        Why = OrNone(trait.Why, say),
        Unit = OrNone(trait.Unit, say),
        States = [.. trait.States.Select(s => s with { Name = say(s.Name), Hint = OrNone(s.Hint, say) })],
    };

    private static Candidate Of(Candidate candidate, Func<string, string> say) => candidate with
    {
        Name = candidate.Kind == CandidateKind.SomethingElse ? say(candidate.Name) : candidate.Name,
        Common = OrNone(candidate.Common, say),
        PriorBasis = OrNone(candidate.PriorBasis, say),
        Card = OrNone(candidate.Card, say),
        Forms = [.. candidate.Forms.Select(f => f with { Name = say(f.Name), WeightBasis = OrNone(f.WeightBasis, say) })],
    };

    private static string? OrNone(string? text, Func<string, string> say) => string.IsNullOrEmpty(text) ? text : say(text);
}
