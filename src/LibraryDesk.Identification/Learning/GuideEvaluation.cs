using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Identification.Learning;

/// <summary>How a guide does on labelled plants.</summary>
/// <param name="Taxa">Candidate ids, in the order of the rows and columns of <paramref name="Confusion"/>.</param>
/// <param name="Forecasts">The odds of each plant, in the order of the plants.</param>
/// <param name="Record">Accuracy, scores and calibration.</param>
/// <param name="Confusion">Plants by what they were (row) and what came first (column).</param>
/// <param name="LeftOut">Scores of traits or states the guide does not have.</param>
public sealed record GuideEvaluation(
    IReadOnlyList<string> Taxa,
    IReadOnlyList<JudgedForecast> Forecasts,
    DeskRecord Record,
    IReadOnlyList<int[]> Confusion,
    IReadOnlyList<LabelledScore> LeftOut)
{
    /// <summary>Cases whose taxon the guide does not have; ids are matched first, then names.</summary>
    public static IReadOnlyList<LabelledCase> UnknownTaxa(CropGuide guide, IReadOnlyList<LabelledCase> cases) =>
        [.. cases.Where(c => TruthOf(guide, c.Taxon) < 0)];

    /// <summary>Ranks every plant by the guide. All taxa must be known, see <see cref="UnknownTaxa"/>; there must be a plant at least.</summary>
    public static GuideEvaluation Of(CompiledGuide guide, IReadOnlyList<LabelledCase> cases, Prior prior)
    {
        var leftOut = new List<LabelledScore>();
        var forecasts = cases.Select(c => ForecastOf(guide, c, prior, leftOut)).ToList();
        return Of(guide.Guide, forecasts, leftOut);
    }

    /// <summary>Learns on all folds but one and ranks the plants of that one, for each fold.</summary>
    /// <param name="folds">The fold of each plant, 0-based.</param>
    public static GuideEvaluation CrossValidated(IReadOnlyList<LabelledCase> cases, IReadOnlyList<int> folds, LearnOptions options)
    {
        var leftOut = new List<LabelledScore>();
        var forecasts = new JudgedForecast[cases.Count];
        CropGuide? last = null;
        foreach (var fold in folds.Distinct().Order())
        {
            last = GuideLearner.Learn([.. cases.Where((_, i) => folds[i] != fold)], options, vocabulary: cases);
            var guide = CompiledGuide.Compile(last);
            for (var i = 0; i < cases.Count; i++)
            {
                if (folds[i] == fold) forecasts[i] = ForecastOf(guide, cases[i], Prior.OfGuide, leftOut);
            }
        }

        return Of(last!, forecasts, leftOut);
    }

    private static GuideEvaluation Of(CropGuide guide, IReadOnlyList<JudgedForecast> forecasts, List<LabelledScore> leftOut)
    {
        var confusion = new int[guide.Candidates.Count][];
        for (var c = 0; c < confusion.Length; c++) confusion[c] = new int[confusion.Length];
        foreach (var forecast in forecasts) confusion[forecast.Truth][forecast.First]++;
        return new GuideEvaluation([.. guide.Candidates.Select(c => c.Id)], forecasts, DeskRecord.Of(forecasts)!, confusion, leftOut);
    }

    private static JudgedForecast ForecastOf(CompiledGuide guide, LabelledCase one, Prior prior, List<LabelledScore> leftOut)
    {
        var ranking = Ranker.Rank(guide, LabelledEvidence.Of(guide, one, leftOut), prior);
        var probabilities = ranking.Candidates.ToDictionary(c => c.Id, c => c.Probability);
        return new JudgedForecast([.. guide.Guide.Candidates.Select(c => probabilities.GetValueOrDefault(c.Id))], TruthOf(guide.Guide, one.Taxon));
    }

    private static int TruthOf(CropGuide guide, string taxon)
    {
        for (var c = 0; c < guide.Candidates.Count; c++)
        {
            if (guide.Candidates[c].Id == taxon) return c;
        }

        for (var c = 0; c < guide.Candidates.Count; c++)
        {
            if (guide.Candidates[c].Name.Equals(taxon, StringComparison.OrdinalIgnoreCase)) return c;
        }

        return -1;
    }
}
