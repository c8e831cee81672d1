namespace LibraryDesk.Identification.Guides;

/// <summary>What a candidate is.</summary>
public enum CandidateKind
{
    /// <summary>A species of the crop.</summary>
    Species,

    /// <summary>A plant of another genus that a person could take for the crop.</summary>
    LookAlike,

    /// <summary>Whatever the guide does not list.</summary>
    SomethingElse,
}

/// <summary>What a ranking ranks.</summary>
/// <param name="Common">Everyday name, or null.</param>
/// <param name="Domesticated">True for plants grown from seed that people keep.</param>
/// <param name="Prior">Share among plants brought to a desk, before anything is known; shares of all candidates sum to 1.</param>
/// <param name="PriorBasis">What the share rests on.</param>
/// <param name="Cautions">Ids of cautions that belong to this candidate.</param>
/// <param name="Card">Two or three plain sentences, or null.</param>
/// <param name="Sources">Ids of the sources of the card.</param>
/// <param name="Profiles">Named sets of cells that forms of this candidate may fall back to.</param>
/// <param name="Forms">Forms with weights that sum to 1; empty when the candidate is one form, itself.</param>
public sealed record Candidate(
    string Id,
    string Name,
    string? Common,
    CandidateKind Kind,
    bool Domesticated,
    double Prior,
    string? PriorBasis,
    IReadOnlyList<string> Cautions,
    string? Card,
    IReadOnlyList<string> Sources,
    IReadOnlyList<string> Profiles,
    IReadOnlyList<Form> Forms);

/// <summary>A recognisable kind inside a species: traits that go together.</summary>
/// <param name="Weight">Share of the form inside its species.</param>
/// <param name="From">Cell sets (<c>candidate/profile</c> or a candidate id) used where the form has no cells of its own, first match first.</param>
public sealed record Form(string Id, string Name, double Weight, string? WeightBasis, IReadOnlyList<string> From);
