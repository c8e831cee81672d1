using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Reasons;

/// <summary>
/// Everything that could have been answered to one trait in the way it was answered, with its probability under each form of one candidate
/// and under the broad alternative. What was answered is outcome 0. An answer "either of these" counts as one outcome, each other state as another.
/// </summary>
internal sealed class TraitOutcomes
{
    /// <summary>Several people or looks multiply; beyond this many outcomes further answers to the trait are left out, here only.</summary>
    private const int MostOutcomes = 256;

    private TraitOutcomes(string trait, int count, int forms)
    {
        Trait = trait;
        Count = count;
        Probability = new double[count * forms];
        LogBroad = new double[count];
    }

    public string Trait { get; }

    public int Count { get; }

    /// <summary>P(outcome | form), outcome by outcome.</summary>
    public double[] Probability { get; }

    public double[] LogBroad { get; }

    /// <param name="weights">Prior of the forms, for the mean that stands for unknown cells and for half of the broad alternative.</param>
    public static TraitOutcomes Of(CompiledGuide guide, Evidence evidence, TraitEvidence answered, int candidate, double[] weights)
    {
        var trait = answered.Trait;
        return answered.AnswerCount == 1 && AnswerTo(evidence, trait) is { Sure: Sureness.Sure } only
            ? OfSureAnswer(guide, trait, only, candidate, weights)
            : OfSeveral(guide, evidence, trait, candidate, weights);
    }

    private static Answer AnswerTo(Evidence evidence, CompiledTrait trait)
    {
        foreach (var answer in evidence.Answers)
        {
            if (answer.Trait == trait.Trait.Id) return answer;
        }

        throw new InvalidOperationException("weighed evidence always has its answers");
    }

    /// <summary>The common case: one sure answer, whose probabilities stand ready in the compiled guide.</summary>
    private static TraitOutcomes OfSureAnswer(CompiledGuide guide, CompiledTrait trait, Answer answer, int candidate, double[] weights)
    {
        var (first, end) = (guide.FirstForm[candidate], guide.FirstForm[candidate + 1]);
        var forms = end - first;
        var named = Named(trait, answer);
        var count = 1;
        foreach (var isNamed in named) count += isNamed ? 0 : 1;
        var outcomes = new TraitOutcomes(trait.Trait.Id, count, forms);
        var mass = Rows.Dot(weights, trait.Known);
        var next = 1;
        for (var y = 0; y < trait.Answers; y++)
        {
            var o = named[y] ? 0 : next++;
            var phi = trait.PhiRow(y);
            var pool = mass > 0 ? Rows.Dot(weights, phi) / mass : trait.PhiPool[y];
            var broad = Likelihood.SomethingElse(pool, trait.PhiUniform[y]);
            outcomes.LogBroad[o] += broad;
            for (var i = 0; i < forms; i++)
            {
                var f = first + i;
                outcomes.Probability[(o * forms) + i] += f == guide.SomethingElse ? broad : trait.Known[f] == 0 ? pool : phi[f];
            }
        }

        for (var o = 0; o < count; o++) outcomes.LogBroad[o] = Math.Log(outcomes.LogBroad[o]);
        return outcomes;
    }

    private static TraitOutcomes OfSeveral(CompiledGuide guide, Evidence evidence, CompiledTrait trait, int candidate, double[] weights)
    {
        var pool = new double[trait.States];
        var mass = Rows.Dot(weights, trait.Known);
        for (var s = 0; s < pool.Length; s++) pool[s] = mass > 0 ? Rows.Dot(weights, trait.ThetaRow(s)) / mass : trait.ThetaPool[s];
        var answers = evidence.Answers.Where(a => a.Trait == trait.Trait.Id).OrderBy(a => a.Look, StringComparer.Ordinal).ThenBy(a => a.Person, StringComparer.Ordinal).ToList();
        var options = new List<(string Look, List<double[]> Options)>();
        var count = 1;
        foreach (var answer in answers)
        {
            var possible = Options(trait, answer);
            if (options.Count > 0 && count * possible.Count > MostOutcomes) break;
            count *= possible.Count;
            options.Add((answer.Look, possible));
        }

        var (first, end) = (guide.FirstForm[candidate], guide.FirstForm[candidate + 1]);
        var outcomes = new TraitOutcomes(trait.Trait.Id, count, end - first);
        var forms = Enumerable.Range(first, end - first).Select(f => Shares(guide, trait, f, pool)).ToArray();
        var broad = Broad(trait, pool);
        for (var o = 0; o < count; o++)
        {
            var looks = Looks(trait, options, o);
            for (var i = 0; i < forms.Length; i++) outcomes.Probability[(o * forms.Length) + i] = Likelihood.Of(looks, forms[i]);
            outcomes.LogBroad[o] = Math.Log(Likelihood.Of(looks, broad));
        }

        return outcomes;
    }

    private static double[] Shares(CompiledGuide guide, CompiledTrait trait, int form, double[] pool)
    {
        if (form == guide.SomethingElse) return Broad(trait, pool);
        if (trait.Known[form] == 0) return pool;
        var shares = new double[trait.States];
        for (var s = 0; s < shares.Length; s++) shares[s] = trait.ThetaRow(s)[form];
        return shares;
    }

    private static double[] Broad(CompiledTrait trait, double[] pool)
    {
        var broad = new double[trait.States];
        for (var s = 0; s < broad.Length; s++) broad[s] = Likelihood.SomethingElse(pool[s], 1.0 / trait.States);
        return broad;
    }

    /// <summary>P(option | state) for what was answered, first, and for each thing that could have been answered instead.</summary>
    private static List<double[]> Options(CompiledTrait trait, Answer answer)
    {
        var named = Named(trait, answer);
        var options = new List<double[]> { new double[trait.States] };
        for (var y = 0; y < trait.Answers; y++)
        {
            if (!named[y]) options.Add(new double[trait.States]);
            var option = named[y] ? options[0] : options[^1];
            for (var s = 0; s < trait.States; s++) option[s] += trait.Confusion[(int)answer.Sure][(s * trait.Answers) + y];
        }

        return options;
    }

    private static bool[] Named(CompiledTrait trait, Answer answer)
    {
        var named = new bool[trait.Answers];
        if (trait.Scale is not { } scale)
        {
            for (var y = 0; y < named.Length; y++) named[y] = answer.States.Contains(trait.Trait.States[y].Id);
            return named;
        }

        const int BinsPerAnswer = MeasuredScale.Bins / MeasuredScale.AnswerBins;
        foreach (var band in answer.Bands)
        {
            // A range names the bins whose middle it holds, and always at least the bin of its own middle.
            var low = scale.BinOf(Math.Max(band.Low, 1e-300)) / BinsPerAnswer;
            var high = scale.BinOf(band.High) / BinsPerAnswer;
            var middle = scale.BinOf(Math.Sqrt(Math.Max(band.Low, 1e-300) * band.High)) / BinsPerAnswer;
            for (var y = low; y <= high; y++)
            {
                var at = Math.Exp(scale.EdgeLog((y * BinsPerAnswer) + (BinsPerAnswer / 2)));
                if (y == middle || (at >= band.Low && at <= band.High)) named[y] = true;
            }
        }

        return named;
    }

    private static double[][] Looks(CompiledTrait trait, List<(string Look, List<double[]> Options)> options, int outcome)
    {
        var looks = new List<double[]>();
        string? look = null;
        foreach (var (name, possible) in options)
        {
            var option = possible[outcome % possible.Count];
            outcome /= possible.Count;
            if (looks.Count == 0 || (name != look && trait.Trait.VariesWithinPlant)) looks.Add((double[])option.Clone());
            else Multiply(looks[^1], option);
            look = name;
        }

        return [.. looks];
    }

    private static void Multiply(double[] target, double[] source)
    {
        for (var s = 0; s < target.Length; s++) target[s] *= source[s];
    }
}
