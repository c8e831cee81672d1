using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Answers;

/// <summary>All answers to one trait, as likelihoods of what was there to be seen.</summary>
internal sealed class TraitEvidence
{
    private TraitEvidence(CompiledTrait trait, double[][] looks, bool doubtful, int answers)
    {
        Trait = trait;
        Looks = looks;
        IsDoubtful = doubtful;
        AnswerCount = answers;
    }

    public CompiledTrait Trait { get; }

    /// <summary>
    /// Per look, P(all answers of that look | state seen), scaled so that the largest is 1. Traits that do not vary within a plant
    /// have one entry for all looks, since every look saw the same state.
    /// </summary>
    public double[][] Looks { get; }

    /// <summary>True where an answer was not sure, or people or looks disagree: a second look may be worth it.</summary>
    public bool IsDoubtful { get; }

    public int AnswerCount { get; }

    public static TraitEvidence[] Weigh(CompiledGuide guide, IReadOnlyList<Answer> answers)
    {
        // A fixed order makes sums and products come out the same to the last bit whatever order the answers came in.
        var groups = answers
            .GroupBy(a => guide.TraitIndex(a.Trait))
            .OrderBy(g => g.Key)
            .Select(g => WeighTrait(guide, guide.Traits[g.Key], [.. g]));
        return [.. groups];
    }

    private static TraitEvidence WeighTrait(CompiledGuide guide, CompiledTrait trait, List<Answer> answers)
    {
        var looks = new List<double[]>();
        foreach (var look in answers.GroupBy(a => a.Look).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            if (looks.Count == 0 || trait.Trait.VariesWithinPlant)
            {
                var seen = new double[trait.States];
                Array.Fill(seen, 1);
                looks.Add(seen);
            }

            foreach (var answer in look.OrderBy(a => a.Person, StringComparer.Ordinal)) Multiply(looks[^1], Given(guide, trait, answer));
        }

        return new TraitEvidence(trait, [.. looks], Doubtful(trait, answers), answers.Count);
    }

    /// <summary>P(A | s): the sum over the named states of the confusion of s (coarsening at random, Heitjan and Rubin 1991).</summary>
    internal static double[] Given(CompiledGuide guide, CompiledTrait trait, Answer answer)
    {
        var given = new double[trait.States];
        var sureness = (int)answer.Sure;
        if (trait.Scale is { } scale)
        {
            var band = new double[trait.States];
            foreach (var b in answer.Bands.OrderBy(b => b.Low).ThenBy(b => b.High))
            {
                scale.Likelihood(b.Low, b.High, sureness, guide.Reliability(sureness), band);
                for (var s = 0; s < given.Length; s++) given[s] = Math.Min(1, given[s] + band[s]);
            }

            return given;
        }

        for (var y = 0; y < trait.States; y++)
        {
            if (!answer.States.Contains(trait.Trait.States[y].Id)) continue;
            for (var s = 0; s < given.Length; s++) given[s] += trait.Confusion[sureness][(s * trait.Answers) + y];
        }

        // All states named says nothing: exactly 1, not 1 less a rounding.
        if (trait.Trait.States.All(s => answer.States.Contains(s.Id))) Array.Fill(given, 1);
        return given;
    }

    private static void Multiply(double[] seen, double[] given)
    {
        var largest = 0.0;
        for (var s = 0; s < seen.Length; s++)
        {
            seen[s] *= given[s];
            largest = Math.Max(largest, seen[s]);
        }

        if (largest <= 0) return;
        for (var s = 0; s < seen.Length; s++) seen[s] /= largest;
    }

    private static bool Doubtful(CompiledTrait trait, List<Answer> answers)
    {
        if (answers.Any(a => a.Sure != Sureness.Sure)) return true;
        return trait.Scale is null && answers.Count > 1
            && !trait.Trait.States.Any(s => answers.All(a => a.States.Contains(s.Id)));
    }
}
