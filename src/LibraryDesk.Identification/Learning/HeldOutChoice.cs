using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Learning;

/// <summary>
/// Chooses smoothing and temper by the log loss of held-out plants. Traits of one plant repeat each other (a large fruit is long and wide), and multiplying
/// them as if they did not makes odds too sure; the power that predicts held-out plants best takes that back.
/// </summary>
internal static class HeldOutChoice
{
    private const int Folds = 5;
    private const ulong Seed = 1979;

    private static readonly double[] Smoothings = [0.25, 0.5, 1, 2];
    private static readonly double[] Tempers = [0.3, 0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1];

    public static (double Smoothing, double Temper) Of(IReadOnlyList<LabelledCase> cases, LearnOptions options, IReadOnlyList<LabelledCase> vocabulary)
    {
        var folds = Learning.Folds.Stratified([.. cases.Select(c => c.Taxon)], Folds, Seed);
        var best = (Smoothing: options.Smoothing ?? 1, Temper: options.Temper ?? 1);
        var least = double.PositiveInfinity;
        foreach (var smoothing in options.Smoothing is { } s ? [s] : Smoothings)
        {
            var losses = Losses(cases, options, vocabulary, folds, smoothing, options.Temper is { } t ? [t] : Tempers);
            foreach (var (temper, loss) in losses)
            {
                if (loss < least - 1e-12) (least, best) = (loss, (smoothing, temper));
            }
        }

        return best;
    }

    private static List<(double Temper, double Loss)> Losses(IReadOnlyList<LabelledCase> cases, LearnOptions options, IReadOnlyList<LabelledCase> vocabulary, int[] folds, double smoothing, double[] tempers)
    {
        var losses = new double[tempers.Length];
        for (var fold = 0; fold < Folds; fold++)
        {
            var training = cases.Where((_, i) => folds[i] != fold).ToList();
            if (training.Select(c => c.Taxon).Distinct().Count() < 2) continue;
            var guide = CompiledGuide.Compile(GuideLearner.LearnPlain(training, options, vocabulary, smoothing, temper: 1));
            for (var i = 0; i < cases.Count; i++)
            {
                if (folds[i] != fold) continue;
                AddLosses(guide, cases[i], tempers, losses);
            }
        }

        return [.. tempers.Zip(losses)];
    }

    /// <summary>With a flat prior and temper 1 the posterior is the likelihood; any other temper follows from its powers.</summary>
    private static void AddLosses(CompiledGuide guide, LabelledCase one, double[] tempers, double[] losses)
    {
        var ranking = Ranker.Rank(guide, LabelledEvidence.Of(guide, one, leftOut: null), Prior.Flat);
        var truth = GuideLearner.IdOf(one.Taxon);
        var priors = guide.Guide.Candidates.ToDictionary(c => c.Id, c => c.Prior);
        for (var t = 0; t < tempers.Length; t++)
        {
            double sum = 0, right = 0;
            foreach (var candidate in ranking.Candidates)
            {
                var weight = priors[candidate.Id] * Math.Pow(candidate.Probability, tempers[t]);
                sum += weight;
                if (candidate.Id == truth) right = weight;
            }

            losses[t] -= Math.Log(Math.Max(right / sum, 1e-15));
        }
    }
}
