using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Identification.Learning;

/// <summary>A determined plant that two guide versions are judged by.</summary>
/// <param name="Id">The case it comes from.</param>
/// <param name="Taxon">Candidate id it was determined as.</param>
/// <param name="Answers">All answers; a guide leaves out what it does not know.</param>
/// <param name="IsProof">True where the truth does not lean on the odds that were shown: only such plants are scored and learned from.</param>
public sealed record RerunPlant(string Id, string Taxon, IReadOnlyList<Answer> Answers, bool IsProof);

/// <summary>How one guide version reads one plant.</summary>
/// <param name="First">Name of the likeliest candidate.</param>
/// <param name="FirstProbability">Its probability, 0 to 1.</param>
/// <param name="Truth">Probability of what it was; 0 where the guide does not have it.</param>
/// <param name="IsRight">True where the likeliest candidate is what it was.</param>
public sealed record RerunReading(string First, double FirstProbability, double Truth, bool IsRight);

/// <summary>One plant, before and after.</summary>
public sealed record RerunLine(string Id, string Taxon, string Name, bool IsProof, RerunReading Before, RerunReading After);

/// <summary>All determined plants under two guide versions.</summary>
/// <param name="Lines">In the order of the plants.</param>
/// <param name="Before">Scores of the plants that prove something; null where there are none.</param>
/// <param name="After">The same under the new version.</param>
/// <param name="Learned">Plants whose counts the new version would carry.</param>
public sealed record GuideRerun(IReadOnlyList<RerunLine> Lines, DeskRecord? Before, DeskRecord? After, int Learned)
{
    /// <summary>Ranks every plant by both versions. Where a version carries counts of determined plants, each plant is ranked without its own (leave-one-out).</summary>
    /// <param name="isLearning">Whether the new version carries counts of the proving plants.</param>
    /// <param name="progress">Told how many plants are done.</param>
    public static GuideRerun Of(
        CropGuide before, CropGuide after, bool isLearning, IReadOnlyList<RerunPlant> plants, Action<int>? progress, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(plants);
        var (old, renewed) = (new LeaveOneOut(before, DeterminedCounts.AreIn(before), plants), new LeaveOneOut(after, isLearning, plants));
        var lines = new List<RerunLine>();
        List<JudgedForecast> was = [], becomes = [];
        for (var i = 0; i < plants.Count; i++)
        {
            stop.ThrowIfCancellationRequested();
            var (first, second) = (old.Rank(i), renewed.Rank(i));
            var name = after.FindCandidate(plants[i].Taxon)?.Name ?? before.FindCandidate(plants[i].Taxon)?.Name ?? plants[i].Taxon;
            lines.Add(new RerunLine(plants[i].Id, plants[i].Taxon, name, plants[i].IsProof, ReadingOf(first, plants[i]), ReadingOf(second, plants[i])));
            if (plants[i].IsProof)
            {
                was.Add(ForecastOf(first, plants[i]));
                becomes.Add(ForecastOf(second, plants[i]));
            }

            progress?.Invoke(i + 1);
        }

        return new GuideRerun(lines, DeskRecord.Of(was), DeskRecord.Of(becomes), isLearning ? was.Count : 0);
    }

    /// <summary>The guide as it would be published.</summary>
    public static CropGuide ToPublish(CropGuide guide, bool isLearning, IReadOnlyList<RerunPlant> plants) => new LeaveOneOut(guide, isLearning, plants).Whole;

    private static RerunReading ReadingOf(Ranking ranking, RerunPlant plant)
    {
        var first = ranking.Candidates[0];
        var truth = ranking.Candidates.FirstOrDefault(c => c.Id == plant.Taxon)?.Probability ?? 0;
        return new RerunReading(first.Name, first.Probability, truth, first.Id == plant.Taxon);
    }

    /// <summary>A taxon that the guide does not have stands as one more candidate with no chance at all.</summary>
    private static JudgedForecast ForecastOf(Ranking ranking, RerunPlant plant)
    {
        var truth = 0;
        while (truth < ranking.Candidates.Count && ranking.Candidates[truth].Id != plant.Taxon) truth++;
        List<double> probabilities = [.. ranking.Candidates.Select(c => c.Probability)];
        if (truth == probabilities.Count) probabilities.Add(0);
        return new JudgedForecast(probabilities, truth);
    }

    private sealed class LeaveOneOut
    {
        private readonly IReadOnlyList<RerunPlant> _plants;
        private readonly CompiledGuide _basis;
        private readonly PlantCounts?[] _own;
        private readonly DeterminedCounts? _counts;
        private readonly AnswerSlips? _slips;
        private readonly CompiledGuide _all;

        public LeaveOneOut(CropGuide guide, bool isLearning, IReadOnlyList<RerunPlant> plants)
        {
            _plants = plants;
            _basis = CompiledGuide.Compile(DeterminedCounts.WithoutIn(guide));
            _own = new PlantCounts?[plants.Count];
            _all = _basis;
            if (!isLearning) return;
            var seen = new (string Taxon, Evidence Evidence)[plants.Count];
            for (var i = 0; i < _own.Length; i++)
            {
                // Without proof a plant teaches nothing, as one without answers would.
                seen[i] = (plants[i].Taxon, plants[i].IsProof ? Evidence.OfKnown(_basis, plants[i].Answers) : Evidence.None(_basis));
                if (plants[i].IsProof) _own[i] = PlantCounts.Of(_basis, seen[i].Taxon, seen[i].Evidence);
            }

            _counts = new DeterminedCounts(_basis, _own.OfType<PlantCounts>());
            _slips = AnswerSlips.Of(_basis, seen);
            _all = CompiledGuide.Compile(With(_counts.Guide(), _slips.Counts()));
        }

        public CropGuide Whole => _all.Guide;

        public Ranking Rank(int plant)
        {
            var guide = _all;
            if (_counts is not null && _own[plant] is { } own)
            {
                var rest = _counts.GuideWithout(own, _plants[plant].Answers.Select(a => a.Trait).ToHashSet());
                guide = CompiledGuide.Compile(With(rest, _slips!.CountsWithout(plant)));
            }

            return Ranker.Rank(guide, Evidence.OfKnown(guide, _plants[plant].Answers), Prior.OfGuide);
        }

        private static CropGuide With(CropGuide guide, IReadOnlyList<AnswerCount> answers) => guide with { Answers = [.. guide.Answers, .. answers] };
    }
}
