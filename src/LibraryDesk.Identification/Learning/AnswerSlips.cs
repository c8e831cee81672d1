using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Learning;

/// <summary>How often answers slip, trait by trait and by how sure they were given, as plants of known identity tell.</summary>
/// <remarks>
/// An answer is either careful, and then spread as the observer model spreads a faultless one, or a slip. Which it was is weighed by how often the plant's
/// kind shows each state, and the share of careful answers is fitted to all of them: expectation and maximisation (Dempster, Laird and Rubin 1977, as in
/// <see cref="PlantCounts"/>) under a beta prior about what the guide says, worth <see cref="ObserverReliability.Weight"/> answers. Where each answer is
/// plainly one or the other, the fit is the mean of the beta law after the counts.
/// The frequencies are the published ones: where they are wrong, answers look like slips too, so what comes out errs on the side of doubt.
/// </remarks>
public sealed class AnswerSlips
{
    private const int MostSteps = 1000;
    private const double Tolerance = 1e-10;

    private readonly List<SaidState> _groups = [];
    private readonly Dictionary<(int Trait, Sureness Sure), Share> _shares = [];
    private readonly CompiledGuide _basis;
    private ILookup<int, SaidState>? _ofPlant;

    private AnswerSlips(CompiledGuide basis) => _basis = basis;

    /// <summary>Fits the shares to the plants.</summary>
    /// <param name="basis">The guide without counts of determined plants and of answers on them.</param>
    /// <param name="plants">Candidate id and answers of each, checked against <paramref name="basis"/>; a candidate it does not have, or "something else", tells nothing.</param>
    public static AnswerSlips Of(CompiledGuide basis, IReadOnlyList<(string Taxon, Evidence Evidence)> plants)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(plants);
        var slips = new AnswerSlips(basis);
        for (var i = 0; i < plants.Count; i++)
        {
            foreach (var group in SaidState.Of(basis, plants[i].Taxon, plants[i].Evidence)) slips.Add(group with { Plant = i });
        }

        slips.Fit();
        return slips;
    }

    /// <summary>The counts as a guide carries them.</summary>
    public IReadOnlyList<AnswerCount> Counts() => Rows(_shares.ToDictionary(s => s.Key, s => (s.Value.Right, s.Value.Count)));

    /// <summary>
    /// The counts as if one plant had never been seen. What the other plants' answers are taken for was weighed with it among them; that is a second-order effect.
    /// </summary>
    /// <param name="plant">Its place in the list, 0-based.</param>
    public IReadOnlyList<AnswerCount> CountsWithout(int plant)
    {
        var left = _shares.ToDictionary(s => s.Key, s => (s.Value.Right, s.Value.Count));
        foreach (var group in (_ofPlant ??= _groups.ToLookup(g => g.Plant))[plant])
        {
            for (var i = 0; i < group.Answers.Count; i++)
            {
                var key = (group.Trait, group.Answers[i].Sure);
                left[key] = (Math.Max(0, left[key].Right - group.Careful[i]), left[key].Count - 1);
            }
        }

        return Rows(left);
    }

    private void Add(SaidState group)
    {
        _groups.Add(group);
        foreach (var answer in group.Answers)
        {
            var key = (group.Trait, answer.Sure);
            if (!_shares.TryGetValue(key, out var share)) _shares[key] = share = new Share(_basis.Traits[group.Trait].Observer.At(answer.Sure));
            share.Count++;
        }
    }

    private void Fit()
    {
        for (var step = 0; step < MostSteps; step++)
        {
            foreach (var share in _shares.Values) share.Right = 0;
            foreach (var group in _groups)
            {
                group.Weigh(sure => _shares[(group.Trait, sure)].Value);
                for (var i = 0; i < group.Answers.Count; i++) _shares[(group.Trait, group.Answers[i].Sure)].Right += group.Careful[i];
            }

            var moved = 0.0;
            foreach (var share in _shares.Values) moved = Math.Max(moved, share.Renew());
            if (moved < Tolerance) return;
        }
    }

    private List<AnswerCount> Rows(Dictionary<(int Trait, Sureness Sure), (double Right, int Count)> shares) =>
        [.. shares.Where(s => s.Value.Count > 0).OrderBy(s => s.Key.Trait).ThenBy(s => s.Key.Sure)
            .Select(s => new AnswerCount(_basis.Traits[s.Key.Trait].Trait.Id, s.Key.Sure, Math.Min(s.Value.Count, Math.Round(s.Value.Right, 6)), s.Value.Count, DeterminedCounts.From, 0))];

    /// <summary>The share of careful answers of one trait and sureness.</summary>
    private sealed class Share
    {
        private readonly double _stated;

        public Share(double stated) => _stated = Value = stated;

        public double Value { get; private set; }

        public int Count { get; set; }

        /// <summary>Careful answers in expectation.</summary>
        public double Right { get; set; }

        /// <summary>Takes the share that the counts come to; returns how far it moved.</summary>
        public double Renew()
        {
            var before = Value;
            Value = ((ObserverReliability.Weight * _stated) + Right) / (ObserverReliability.Weight + Count);
            return Math.Abs(Value - before);
        }
    }
}
