using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Identification.Learning;

/// <summary>
/// Judges the forms of a guide by descriptions held out: all that one source says of one form is taken out of the guide, plants are drawn from what that
/// source says, and the guide that has not read it names their species. A row that the source was needed for falls back on its species,
/// and a plant is answered in a trait only as often as the source says anything of it: "rarely purple" makes few plants purple, not all.
/// </summary>
/// <param name="Descriptions">Number of pairs of form and source that describe two traits or more.</param>
/// <param name="LogLoss">Mean log loss of the species in nats, every species counting alike.</param>
/// <param name="Record">Accuracy and calibration over all drawn plants.</param>
/// <param name="Forms">What each form does.</param>
public sealed record HeldOutForms(int Descriptions, double LogLoss, DeskRecord Record, IReadOnlyList<HeldOutForms.FormEffect> Forms)
{
    /// <summary>Plants drawn of each species, so that every species counts alike, however much was written about it.</summary>
    private const int Plants = 400;

    /// <summary>Share that the statements of a row come to at least when they tell the whole of it: the lowest is one "usually".</summary>
    private const double WholeRow = 0.75;

    /// <summary>One form.</summary>
    /// <param name="Descriptions">How many of the descriptions are of it.</param>
    /// <param name="Gain">Nats of log loss saved against the guide with the form taken out and its weight shared by its siblings; below 0 where that does better.</param>
    /// <param name="GainError">Standard error of the gain over the descriptions, in nats: they are few, and plants of one description are alike.</param>
    public sealed record FormEffect(string Candidate, string Form, int Descriptions, double Gain, double GainError)
    {
        /// <summary>True where the descriptions show that the guide does better without the form, by more than their own scatter (two standard errors).</summary>
        public bool Costs => Gain < -2 * GainError;
    }

    /// <summary>Runs the comparison. Null where no form is described by a source that was opened.</summary>
    /// <param name="among">Candidate ids in play, all alike before looking.</param>
    public static HeldOutForms? Of(CropGuide guide, IReadOnlyList<string> among)
    {
        var prior = new Prior(IsFlat: true, Among: among);
        var forms = guide.Candidates.Where(c => among.Contains(c.Id) && c.Forms.Count > 1).SelectMany(c => c.Forms.Select(f => (Candidate: c, Form: f))).ToList();
        var described = forms.SelectMany(f => DescriptionsOf(guide, f.Candidate, f.Form)).ToList();
        if (described.Count == 0) return null;
        var whole = 0.0;
        var gains = forms.Select(_ => new List<(double Share, double Gain)>()).ToList();
        var forecasts = new List<JudgedForecast>();
        var random = new SeededDraws(2022);
        var species = described.Select(d => d.Candidate.Id).Distinct().Count();
        foreach (var one in described)
        {
            var plants = Math.Max(1, Plants / described.Count(d => d.Candidate == one.Candidate));
            var share = 1.0 / (species * described.Count(d => d.Candidate == one.Candidate) * plants);
            var saved = new double[forms.Count];
            var left = CompiledGuide.Compile(guide with { Cells = Without(guide, one) });
            for (var n = 0; n < plants; n++)
            {
                var ranking = Ranker.Rank(left, Draw(left, one.Cells, ref random), prior);
                var loss = -LogOf(ranking.Candidates.Single(c => c.Id == one.Candidate.Id).Probability);
                whole += share * loss;
                for (var f = 0; f < forms.Count; f++) saved[f] += (-LogOf(Without(ranking, forms[f].Candidate, forms[f].Form, one.Candidate.Id)) - loss) / plants;
                forecasts.Add(new JudgedForecast([.. among.Select(id => ranking.Candidates.Single(c => c.Id == id).Probability)], among.ToList().IndexOf(one.Candidate.Id)));
            }

            for (var f = 0; f < forms.Count; f++) gains[f].Add((share * plants, saved[f]));
        }

        return new HeldOutForms(described.Count, whole, DeskRecord.Of(forecasts)!, [.. forms.Select((f, i) =>
            EffectOf(f.Candidate.Id, f.Form.Id, described.Count(d => d.Form == f.Form), gains[i]))]);
    }

    private static FormEffect EffectOf(string candidate, string form, int descriptions, List<(double Share, double Gain)> gains)
    {
        var mean = gains.Sum(g => g.Share * g.Gain);
        return new FormEffect(candidate, form, descriptions, mean, Math.Sqrt(gains.Sum(g => g.Share * g.Share * (g.Gain - mean) * (g.Gain - mean))));
    }

    private static double LogOf(double probability) => Math.Log(Math.Max(probability, 1e-15));

    private sealed record Description(Candidate Candidate, Form Form, string Of, string Source, IReadOnlyList<IGrouping<string, Cell>> Cells);

    private static IEnumerable<Description> DescriptionsOf(CropGuide guide, Candidate candidate, Form form)
    {
        var of = candidate.Id + "/" + form.Id;
        return guide.Cells.Where(c => c.Of == of && !c.IsWeak && !c.IsLeftover).GroupBy(c => c.Source)
            .Select(s => new Description(candidate, form, of, s.Key, [.. s.GroupBy(c => c.Trait)]))
            .Where(d => d.Cells.Count >= 2);
    }

    private static IReadOnlyList<Cell> Without(CropGuide guide, Description one)
    {
        List<Cell> left = [.. guide.Cells.Where(c => c.Of != one.Of || c.Source != one.Source)];
        // A row made of several sources is no row without one of them: the states it named would come out as hardly ever seen.
        var broken = one.Cells.Select(t => t.Key)
            .Where(t => guide.FindTrait(t)!.Kind != TraitKind.Measured && left.Where(c => c.Of == one.Of && c.Trait == t && !c.IsLeftover).Sum(c => c.Share) < WholeRow)
            .ToHashSet();
        return [.. left.Where(c => c.Of != one.Of || !broken.Contains(c.Trait))];
    }

    private static Evidence Draw(CompiledGuide guide, IReadOnlyList<IGrouping<string, Cell>> traits, ref SeededDraws random)
    {
        var answers = new List<Answer>();
        foreach (var trait in traits)
        {
            var u = random.Next() * Math.Max(1, trait.Sum(c => c.Share));
            if (trait.FirstOrDefault(next => (u -= next.Share) < 0) is not { } cell) continue;
            answers.Add(cell.State is { } state ? Answer.Of(trait.Key, state) : Answer.Measured(trait.Key, Within(cell, random.Next())));
        }

        return Evidence.Check(guide, answers).Evidence!;
    }

    /// <summary>A number inside a band, even on the scale of logarithms; an open end is half as far again.</summary>
    private static double Within(Cell cell, double u)
    {
        var low = cell.Low is > 0 ? cell.Low.Value : cell.High!.Value / 1.5;
        var high = cell.High ?? cell.Low!.Value * 1.5;
        return low * Math.Pow(high / low, u);
    }

    /// <summary>
    /// The probability of the true species were one form taken out. With weights w and likelihoods L of the forms a species has sum w L; without form x it has
    /// (sum w L - w_x L_x) / (1 - w_x), all of it to be read from one ranking.
    /// </summary>
    private static double Without(Ranking ranking, Candidate candidate, Form form, string truth)
    {
        double of = 0, whole = 0, x = 0;
        foreach (var c in ranking.Candidates)
        {
            if (c.Id == truth) of = c.Probability;
            if (c.Id == candidate.Id) whole = c.Probability;
        }

        foreach (var f in ranking.Forms)
        {
            if (f.Candidate == candidate.Id && f.Form == form.Id) x = f.Probability;
        }

        var left = Math.Max(0, whole - x) / (1 - form.Weight);
        return (truth == candidate.Id ? left : of) / (1 - whole + left);
    }
}
