using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Identification.Learning;

/// <summary>How reliable answers to one trait turned out, beside what the guide states.</summary>
/// <param name="Trait">Trait id.</param>
/// <param name="Sure">As how sure the answers were given.</param>
/// <param name="Stated">What the guide states, 0 to 1.</param>
/// <param name="Right">Answers without a slip, in expectation.</param>
/// <param name="Count">Answers on determined plants.</param>
/// <param name="Learned">What a version that counts them reckons with, 0 to 1.</param>
/// <param name="Low">Lower end of the middle 95 % of the beta law that <paramref name="Learned"/> is the mean of.</param>
/// <param name="High">Upper end of it.</param>
public sealed record LearnedReliability(string Trait, Sureness Sure, double Stated, double Right, double Count, double Learned, double Low, double High)
{
    /// <summary>Every trait and sureness that proving plants were answered in, in the order of the guide.</summary>
    /// <param name="guide">A guide without faults; its own counts of determined plants are left out of account.</param>
    /// <param name="plants">Determined plants; those that prove nothing are left out.</param>
    public static IReadOnlyList<LearnedReliability> Of(CropGuide guide, IReadOnlyList<RerunPlant> plants)
    {
        ArgumentNullException.ThrowIfNull(guide);
        ArgumentNullException.ThrowIfNull(plants);
        var basis = CompiledGuide.Compile(DeterminedCounts.WithoutIn(guide));
        var slips = AnswerSlips.Of(basis, [.. plants.Where(p => p.IsProof).Select(p => (p.Taxon, Evidence.OfKnown(basis, p.Answers)))]);
        return [.. slips.Counts().Select(c => Of(basis.Traits[basis.TraitIndex(c.Trait)].Observer.At(c.Sure), c))];
    }

    private static LearnedReliability Of(double stated, AnswerCount count)
    {
        const double Weight = ObserverReliability.Weight;
        var (right, wrong) = ((Weight * stated) + count.Right, (Weight * (1 - stated)) + count.Count - count.Right);
        var (low, high) = wrong > 0 ? BetaInterval.Of(right, wrong) : (1, 1);
        return new LearnedReliability(count.Trait, count.Sure, stated, count.Right, count.Count, right / (right + wrong), low, high);
    }
}
