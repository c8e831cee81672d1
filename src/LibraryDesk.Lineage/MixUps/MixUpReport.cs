using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>What happened, as a whole: nothing, one cause, or two.</summary>
/// <param name="Causes">None, one or two causes.</param>
/// <param name="Probability">0 to 1; all explanations of a report sum to 1.</param>
/// <param name="SpeaksFor">For each plant, in the order given, how much it speaks for this against "nothing is wrong", the others being known; in decibans, above 0 for. Empty below the likeliest few.</param>
public sealed record Explanation(IReadOnlyList<Cause> Causes, double Probability, IReadOnlyList<double> SpeaksFor);

/// <summary>Growing seed of a node as a check, and what it would tell.</summary>
/// <param name="Node">The packet or lot to sow from.</param>
/// <param name="Plants">How many plants.</param>
/// <param name="Bits">Expected information about what happened, in bits; 0 and more.</param>
public sealed record NextCheck(NodeId Node, int Plants, double Bits);

/// <summary>Where the mix-up may have happened.</summary>
/// <param name="Explanations">Ranked, likeliest first. With at most two causes at once, all there are.</param>
/// <param name="Causes">Each cause with the chance that it happened, alone or with another; likeliest first.</param>
/// <param name="NothingWrong">The chance that nothing is wrong.</param>
/// <param name="IsExact">False when one packing's packets were mixed again in so many ways that they were reckoned apart from each other.</param>
public sealed record MixUpReport(IReadOnlyList<Explanation> Explanations, IReadOnlyList<(Cause Cause, double Probability)> Causes, double NothingWrong, bool IsExact);
