using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Learning;

/// <summary>All answers about one and the same state of a plant of known identity: of one trait, and of one look where the trait varies within a plant.</summary>
/// <param name="Plant">The plant's place in the list.</param>
/// <param name="Trait">The trait's place in the guide.</param>
/// <param name="Shares">How often the plant's kind shows each state.</param>
internal sealed record SaidState(int Plant, int Trait, double[] Shares, IReadOnlyList<SaidState.Said> Answers)
{
    /// <summary>One answer: P(answer | state) when it is careful, and when it is a slip.</summary>
    internal readonly record struct Said(Sureness Sure, double[] Careful, double[] Slip);

    /// <summary>P(careful) of each answer, once <see cref="Weigh"/> was called.</summary>
    public double[] Careful { get; } = new double[Answers.Count];

    public static IEnumerable<SaidState> Of(CompiledGuide guide, string taxon, Evidence evidence)
    {
        if (guide.CandidateIndex(taxon) is not (>= 0 and var candidate) || guide.FirstForm[candidate] == guide.SomethingElse) yield break;
        foreach (var answered in evidence.Traits)
        {
            var trait = answered.Trait;
            if (trait.Known[guide.FirstForm[candidate]] == 0) continue;
            var shares = SharesOf(guide, candidate, trait, evidence);
            foreach (var look in evidence.Answers.Where(a => a.Trait == trait.Trait.Id).GroupBy(a => trait.Trait.VariesWithinPlant ? a.Look : ""))
            {
                // "Any of them" says nothing of whoever said it.
                List<Said> said = [.. look.Select(answer => SaidOf(trait, answer)).Where(s => s.Careful.Max() - s.Careful.Min() > 1e-9)];
                if (said.Count > 0) yield return new SaidState(0, trait.Index, shares, said);
            }
        }
    }

    /// <summary>Weighs each answer against what the others and the kind make of the state.</summary>
    /// <param name="reliability">The share of careful answers at a degree of sureness.</param>
    public void Weigh(Func<Sureness, double> reliability)
    {
        var state = (double[])Shares.Clone();
        foreach (var answer in Answers)
        {
            for (var s = 0; s < state.Length; s++) state[s] *= Mixed(answer, reliability(answer.Sure), s);
        }

        var sum = state.Sum();
        for (var i = 0; i < Answers.Count; i++)
        {
            var r = reliability(Answers[i].Sure);
            // Answers that cannot be, which only a guide without observer error knows of, leave its word as it is.
            Careful[i] = sum > 0 ? 0 : r;
            for (var s = 0; s < state.Length; s++)
            {
                if (state[s] > 0) Careful[i] += state[s] / sum * r * Answers[i].Careful[s] / Mixed(Answers[i], r, s);
            }
        }
    }

    private static double Mixed(in Said answer, double r, int s) => (r * answer.Careful[s]) + ((1 - r) * answer.Slip[s]);

    /// <summary>The candidate's forms weighed by what the plant's other traits make of them: the answers in question must not vouch for themselves.</summary>
    private static double[] SharesOf(CompiledGuide guide, int candidate, CompiledTrait trait, Evidence evidence)
    {
        var id = guide.Guide.Candidates[candidate].Id;
        var forms = Ranker.Rank(guide, evidence.Without(trait.Trait.Id), new Prior(Among: [id])).Forms;
        var shares = new double[trait.States];
        for (var f = guide.FirstForm[candidate]; f < guide.FirstForm[candidate + 1]; f++)
        {
            var weight = forms.First(form => form.Form == guide.Forms[f].Form?.Id).Probability;
            for (var s = 0; s < shares.Length; s++) shares[s] += weight * trait.ThetaRow(s)[f];
        }

        return shares;
    }

    /// <summary>The observer model is a straight line in the reliability, so two points of it give both its ends.</summary>
    private static Said SaidOf(CompiledTrait trait, Answer answer)
    {
        var (slip, half) = (Given(trait, answer, 0), Given(trait, answer, 0.5));
        return new Said(answer.Sure, [.. half.Select((h, s) => (2 * h) - slip[s])], slip);
    }

    private static double[] Given(CompiledTrait trait, Answer answer, double reliability)
    {
        var given = new double[trait.States];
        if (trait.Scale is { } scale)
        {
            var band = new double[trait.States];
            foreach (var b in answer.Bands)
            {
                scale.Likelihood(b.Low, b.High, (int)answer.Sure, reliability, band);
                for (var s = 0; s < given.Length; s++) given[s] += band[s];
            }

            return given;
        }

        var table = ObserverTables.ForStates(trait.Trait, reliability);
        foreach (var state in answer.States)
        {
            for (var s = 0; s < given.Length; s++) given[s] += table[(s * trait.States) + trait.Trait.StateIndex(state)];
        }

        return given;
    }
}
