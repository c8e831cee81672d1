namespace LibraryDesk.Desk.Cases.Review;

/// <summary>One opinion of a round, as the case rules weigh it.</summary>
/// <param name="Sealed">The view given before anything was opened.</param>
/// <param name="Final">The view after the review; null while that is still going on.</param>
public readonly record struct OpinionInHand(NamedTaxon Sealed, NamedTaxon? Final)
{
    /// <summary>The final view, or the sealed one until then.</summary>
    public NamedTaxon Now => Final ?? Sealed;
}

/// <summary>What the traits say at the moment of the decision.</summary>
/// <param name="Odds">Probability by candidate id, 0 to 1; a candidate without an entry has none worth showing.</param>
/// <param name="DecidingAgainst">
/// By candidate id, the names of traits that weigh 20 decibans or more against it and for the leading candidate; no entry means none.
/// </param>
public sealed record TraitsSay(
    IReadOnlyDictionary<string, double> Odds,
    IReadOnlyDictionary<string, IReadOnlyList<string>> DecidingAgainst)
{
    public double OddsOf(string taxon) => Odds.GetValueOrDefault(taxon);

    public IReadOnlyList<string> Against(string taxon) => DecidingAgainst.GetValueOrDefault(taxon, []);
}
