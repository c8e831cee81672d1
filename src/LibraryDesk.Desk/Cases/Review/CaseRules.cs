namespace LibraryDesk.Desk.Cases.Review;

/// <summary>
/// When opinions become a determination. People decide; the odds can only ask for more people, never overrule them.
/// </summary>
public static class CaseRules
{
    /// <summary>
    /// People and odds disagree by much when the agreed candidate has less than this. It is one seed of the twenty shown: below it the
    /// page itself says "under 1 in 20". The desk's own setting, no source.
    /// </summary>
    public const double MuchBelow = 1.0 / 20;

    /// <summary>People who must say the same against the odds or against a deciding trait.</summary>
    public const int AgainstTheTraits = 3;

    /// <summary>Decides one round of a case.</summary>
    /// <param name="opinions">Every opinion of the round, sealed or final.</param>
    /// <param name="needed">The library's setting: concordant opinions that determine a case, 1 to 3.</param>
    /// <param name="traits">Odds and deciding traits at this moment.</param>
    public static CaseDecision Decide(IReadOnlyList<OpinionInHand> opinions, int needed, TraitsSay traits)
    {
        ArgumentNullException.ThrowIfNull(opinions);
        ArgumentNullException.ThrowIfNull(traits);
        ArgumentOutOfRangeException.ThrowIfLessThan(needed, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(needed, 3);

        var inReview = opinions.Count(opinion => opinion.Final is null);
        var told = opinions.Where(opinion => opinion.Now.Tells).ToList();
        var leading = Leading(told);
        var required = Required(leading, needed, traits);
        var final = leading.Count(opinion => opinion.Final is not null);

        // A view still in review cannot carry a determination, but it can stand against one.
        if (final >= required && 2 * leading.Count > told.Count) return Determine(leading, opinions.Count, traits);
        if (inReview > 0 || opinions.Count < needed) return new NotYet(inReview, Math.Max(0, needed - opinions.Count));
        return new AnotherWanted(opinions.Count + 1, Because(leading, told.Count, needed, traits));
    }

    private static List<OpinionInHand> Leading(List<OpinionInHand> told) =>
        told.Select(one => told.Where(other => other.Now.AgreesWith(one.Now)).ToList())
            .OrderByDescending(group => group.Count(opinion => opinion.Final is not null))
            .ThenByDescending(group => group.Count)
            .FirstOrDefault() ?? [];

    private static int Required(List<OpinionInHand> leading, int needed, TraitsSay traits) =>
        leading.Count > 0 && (OddsAgainst(leading, traits) || traits.Against(leading[0].Now.Taxon).Count > 0)
            ? Math.Max(needed, AgainstTheTraits)
            : needed;

    private static bool OddsAgainst(List<OpinionInHand> leading, TraitsSay traits) =>
        traits.OddsOf(leading[0].Now.Taxon) < MuchBelow;

    private static WantedBecause Because(List<OpinionInHand> leading, int told, int needed, TraitsSay traits)
    {
        if (leading.Count == 0) return WantedBecause.CouldNotTell;
        if (2 * leading.Count <= told) return WantedBecause.PeopleDiffer;
        if (leading.Count < needed) return told < needed ? WantedBecause.CouldNotTell : WantedBecause.PeopleDiffer;
        return OddsAgainst(leading, traits) ? WantedBecause.OddsDiffer : WantedBecause.TraitAgainst;
    }

    private static Determined Determine(List<OpinionInHand> leading, int all, TraitsSay traits)
    {
        var careful = leading.Any(opinion => opinion.Now.Qualifier == Qualifiers.Cf) ? Qualifiers.Cf : leading[0].Now.Qualifier;
        var taxon = new NamedTaxon(leading[0].Now.Taxon, careful);
        var changed = leading.Count(opinion => !opinion.Sealed.AgreesWith(opinion.Now));
        return new Determined(taxon, new PeoplesGrounds(leading.Count, all, changed, OddsAgainst(leading, traits), traits.Against(taxon.Taxon)));
    }
}
