using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Answers;

/// <summary>
/// The answers of one case, checked against a guide and weighed by the observer model. Immutable, and the same whatever the order
/// in which the answers came: taking one back means making the evidence anew from the rest.
/// </summary>
public sealed class Evidence
{
    private Evidence(CompiledGuide guide, IReadOnlyList<Answer> answers, TraitEvidence[] traits)
    {
        Guide = guide;
        Answers = answers;
        Traits = traits;
    }

    /// <summary>The guide the answers were checked against.</summary>
    public CompiledGuide Guide { get; }

    /// <summary>The answers, in the order they were given.</summary>
    public IReadOnlyList<Answer> Answers { get; }

    internal TraitEvidence[] Traits { get; }

    /// <summary>No answers at all.</summary>
    public static Evidence None(CompiledGuide guide) => new(guide, [], []);

    /// <summary>Checks answers against a guide. Either the evidence is returned, or every fault, each naming its row.</summary>
    public static EvidenceCheck Check(CompiledGuide guide, IReadOnlyList<Answer> answers)
    {
        var faults = AnswerRules.Check(guide, answers);
        if (faults.Count > 0) return new EvidenceCheck(null, faults);
        return new EvidenceCheck(new Evidence(guide, answers, TraitEvidence.Weigh(guide, answers)), []);
    }

    /// <summary>
    /// The evidence of those answers that this guide knows. Another version may have dropped a trait or a state, and that must not make a plant unreadable.
    /// </summary>
    /// <exception cref="InvalidOperationException">Answers that are good one by one do not go together: one person answers a trait twice at one look.</exception>
    public static Evidence OfKnown(CompiledGuide guide, IReadOnlyList<Answer> answers) =>
        Check(guide, [.. answers.Where(answer => AnswerRules.Check(guide, [answer]).Count == 0)]).Evidence
        ?? throw new InvalidOperationException("Answers that are good one by one do not go together.");

    /// <summary>Only the faults of answers, for checking many cases before any is ranked.</summary>
    public static IReadOnlyList<EvidenceFault> FaultsOf(CompiledGuide guide, IReadOnlyList<Answer> answers) => AnswerRules.Check(guide, answers);

    /// <summary>The same evidence without one trait.</summary>
    public Evidence Without(string trait)
    {
        var index = Guide.TraitIndex(trait);
        return new Evidence(Guide, [.. Answers.Where(a => a.Trait != trait)], [.. Traits.Where(t => t.Trait.Index != index)]);
    }
}
