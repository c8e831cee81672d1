using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>A plant that is tied to library seed and was looked at.</summary>
/// <param name="Label">What the screen calls it: a case number, say.</param>
/// <param name="From">The packet it grew from; the lot, when the library sowed it straight from there.</param>
/// <param name="IfName">Probability of the traits seen if the plant is what the name says; above 0.</param>
/// <param name="IfOff">Probability of the traits seen if it is another variety; above 0. Only the ratio of the two counts.</param>
/// <param name="IfOffBy">The same for kinds of causes that leave other traces, such as a cross; null when there are none.</param>
/// <param name="IsByBorrower">True when a borrower grew it, whose own label may have been lost.</param>
public sealed record TestedPlant(
    string Label,
    NodeId From,
    double IfName,
    double IfOff,
    IReadOnlyDictionary<CauseKind, double>? IfOffBy = null,
    bool IsByBorrower = true)
{
    /// <summary>Probability of the traits if the plant is off for a reason of this kind.</summary>
    public double OffBy(CauseKind kind) => IfOffBy is not null && IfOffBy.TryGetValue(kind, out var off) ? off : IfOff;
}
