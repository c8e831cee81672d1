namespace LibraryDesk.Desk.Cases.Review;

/// <summary>What the opinions of a round come to: <see cref="Determined"/>, <see cref="AnotherWanted"/> or <see cref="NotYet"/>.</summary>
public abstract record CaseDecision;

/// <summary>The people agree and the rules are met.</summary>
/// <param name="Taxon">What is determined, with the most careful qualifier any of the agreeing opinions gave.</param>
/// <param name="Grounds">Why.</param>
public sealed record Determined(NamedTaxon Taxon, PeoplesGrounds Grounds) : CaseDecision;

/// <summary>All opinions so far are final and do not settle it: a further person is needed.</summary>
/// <param name="Number">Which opinion is wanted: 3 for the third.</param>
/// <param name="Reason">Told to those whose opinion is in; never shown in the queue.</param>
public sealed record AnotherWanted(int Number, WantedBecause Reason) : CaseDecision;

/// <summary>Opinions are missing or still in review.</summary>
/// <param name="InReview">Sealed opinions whose review is not finished.</param>
/// <param name="Missing">Opinions still to come before the rules can be met, at least.</param>
public sealed record NotYet(int InReview, int Missing) : CaseDecision;

/// <summary>Why one more opinion is wanted.</summary>
public enum WantedBecause
{
    /// <summary>No view has more than half of those given.</summary>
    PeopleDiffer,
    /// <summary>They agree on a candidate that the odds put under 1 in 20.</summary>
    OddsDiffer,
    /// <summary>They agree, and a trait decides against it.</summary>
    TraitAgainst,
    /// <summary>Too many could not tell from the looks there are.</summary>
    CouldNotTell,
}
