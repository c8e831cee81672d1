using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>Candidates with their odds, as one guide version reads one case.</summary>
/// <param name="GuideId">Guide used.</param>
/// <param name="GuideVersion">Its version.</param>
/// <param name="Candidates">Candidates in play, likeliest first; probabilities sum to 1.</param>
/// <param name="Forms">Their forms, likeliest first; probabilities sum to 1.</param>
/// <param name="Packets">Possible packets, likeliest first; empty where no origin was given.</param>
/// <param name="OutsidePackets">Probability that the plant is from none of the packets; 1 where none was given.</param>
/// <param name="EntropyBits">What is still open between the candidates, in bits.</param>
public sealed record Ranking(
    string GuideId,
    string GuideVersion,
    IReadOnlyList<RankedCandidate> Candidates,
    IReadOnlyList<RankedForm> Forms,
    IReadOnlyList<RankedPacket> Packets,
    double OutsidePackets,
    double EntropyBits)
{
    /// <summary>Seeds of the twenty that no candidate gets: 1 where one candidate is above 19 in 20, else 0.</summary>
    public int UnassignedSeeds => 20 - Candidates.Sum(c => c.Odds.Seeds);

    /// <summary>The forms of at least this probability, likeliest first; quicker than <see cref="Forms"/> where most are far below.</summary>
    public IReadOnlyList<RankedForm> FormsFrom(double least) => Forms is FormRanking ranking ? ranking.From(least) : [.. Forms.Where(f => f.Probability >= least)];
}

/// <summary>One candidate of a ranking.</summary>
/// <param name="Probability">Posterior probability, 0 to 1.</param>
/// <param name="Odds">The same as seeds in twenty, shared among all candidates.</param>
public sealed record RankedCandidate(string Id, string Name, CandidateKind Kind, double Probability, OddsInTwenty Odds);

/// <summary>One form of a ranking; a candidate without forms stands as its own form.</summary>
/// <param name="Form">Form id, or null where the candidate is one form, itself.</param>
/// <param name="Probability">Posterior probability among all forms, 0 to 1.</param>
public sealed record RankedForm(string Candidate, string? Form, string Name, double Probability);

/// <summary>How well the traits go with a packet. A variety is never named from looks; this is all the desk says.</summary>
public enum Fit
{
    /// <summary>Nothing speaks against it.</summary>
    Fits,

    /// <summary>The traits speak against it, but such plants occur.</summary>
    FitsPoorly,

    /// <summary>Such a plant would hardly come from it.</summary>
    DoesNotFit,
}

/// <summary>One possible packet of a ranking.</summary>
/// <param name="Probability">Posterior probability that the plant is from it, 0 to 1.</param>
/// <param name="Fit">How well the traits alone go with it.</param>
/// <param name="TraitDecibans">10 log10 of P(answers | packet) / P(answers | the guide's shares): what the case may feed back to the lot, without the origin prior.</param>
/// <param name="IsTied">True where another packet predicts exactly the same, so that looks cannot part them.</param>
public sealed record RankedPacket(string Id, double Probability, Fit Fit, double TraitDecibans, bool IsTied);
