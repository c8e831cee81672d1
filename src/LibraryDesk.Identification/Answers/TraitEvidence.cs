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
        var sorted = new (int Trait, Answer Answer)[answers.Count];
        for (var i = 0; i < sorted.Length; i++) sorted[i] = (guide.TraitIndex(answers[i].Trait), answers[i]);
        Array.Sort(sorted, InOrder);
        var traits = new List<TraitEvidence>(sorted.Length);
        for (var start = 0; start < sorted.Length;)
        {
            var end = start + 1;
            while (end < sorted.Length && sorted[end].Trait == sorted[start].Trait) end++;
            traits.Add(WeighTrait(guide.Traits[sorted[start].Trait], sorted.AsSpan(start, end - start)));
            start = end;
        }

        return [.. traits];
    }

    private static int InOrder((int Trait, Answer Answer) a, (int Trait, Answer Answer) b)
    {
        var order = a.Trait.CompareTo(b.Trait);
        if (order == 0) order = string.CompareOrdinal(a.Answer.Look, b.Answer.Look);
        return order != 0 ? order : string.CompareOrdinal(a.Answer.Person, b.Answer.Person);
    }

    private static TraitEvidence WeighTrait(CompiledTrait trait, ReadOnlySpan<(int Trait, Answer Answer)> answers)
    {
        if (answers.Length == 1) return Single(trait, answers[0].Answer);
        var looks = new List<double[]>();
        var all = new List<Answer>(answers.Length);
        foreach (var (_, answer) in answers)
        {
            if (looks.Count == 0 || (trait.Trait.VariesWithinPlant && answer.Look != all[^1].Look))
            {
                var seen = new double[trait.States];
                Array.Fill(seen, 1);
                looks.Add(seen);
            }

            Multiply(looks[^1], Given(trait, answer));
            all.Add(answer);
        }

        return new TraitEvidence(trait, [.. looks], Doubtful(trait, all), all.Count);
    }

    private static TraitEvidence Single(CompiledTrait trait, Answer answer)
    {
        if (trait.Scale is not null || answer.States.Count != 1) return OfOne(trait, answer);
        // Evidence never changes, so two threads that make the same entry at once do no harm.
        return trait.Singles[((int)answer.Sure * trait.States) + trait.Trait.StateIndex(answer.States[0])] ??= OfOne(trait, answer);
    }

    private static TraitEvidence OfOne(CompiledTrait trait, Answer answer) =>
        new(trait, [Scaled(Given(trait, answer))], answer.Sure != Sureness.Sure, 1);

    private static double[] Scaled(double[] given)
    {
        var one = new double[given.Length];
        Array.Fill(one, 1);
        Multiply(one, given);
        return one;
    }

    /// <summary>P(A | s): the sum over the named states of the confusion of s (coarsening at random, Heitjan and Rubin 1991).</summary>
    internal static double[] Given(CompiledTrait trait, Answer answer)
    {
        var given = new double[trait.States];
        var sureness = (int)answer.Sure;
        if (trait.Scale is { } scale)
        {
            var band = new double[trait.States];
            foreach (var b in answer.Bands.OrderBy(b => b.Low).ThenBy(b => b.High))
            {
                scale.Likelihood(b.Low, b.High, sureness, trait.Observer.At(answer.Sure), band);
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
        if (answer.States.Count >= trait.States && trait.Trait.States.All(s => answer.States.Contains(s.Id))) Array.Fill(given, 1);
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

        // Two answers that cannot both be true cancel each other; only a guide without observer error gets here.
        if (largest <= 0)
        {
            Array.Fill(seen, 1);
            return;
        }

        for (var s = 0; s < seen.Length; s++) seen[s] /= largest;
    }

    private static bool Doubtful(CompiledTrait trait, List<Answer> answers)
    {
        if (answers.Any(a => a.Sure != Sureness.Sure)) return true;
        return trait.Scale is null && answers.Count > 1
            && !trait.Trait.States.Any(s => answers.All(a => a.States.Contains(s.Id)));
    }
}
