using System.Numerics;
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

    public string Trait { get; private set; } = "";

    /// <summary>How many outcomes there are.</summary>
    public int Count { get; private set; }

    /// <summary>Length of a row: the candidate's forms rounded up to whole vectors; the rest of a row is 0.</summary>
    public int Width { get; private set; }

    /// <summary>
    /// P(outcome | form) times <see cref="Ratio"/>, one row an outcome, so that products of rows are the statistic over that of the broad alternative
    /// for what was answered. Longer than used: kept from case to case.
    /// </summary>
    public double[] Scaled { get; private set; } = [];

    /// <summary>P(what was answered | broad alternative) / P(outcome | broad alternative). Longer than used.</summary>
    public double[] Ratio { get; private set; } = [];

    // P(outcome | form), one row an outcome, and its sums up to each outcome, one row a form.
    private double[] _probability = [];
    private double[] _upTo = [];
    private int _slots;

    /// <summary>The row of an outcome.</summary>
    public ReadOnlySpan<double> Row(int outcome) => Scaled.AsSpan(outcome * Width, Width);

    /// <summary>Fills the table for one answered trait.</summary>
    /// <param name="weights">Prior of the forms, for the mean that stands for unknown cells and for half of the broad alternative.</param>
    public void Fill(CompiledGuide guide, Evidence evidence, TraitEvidence answered, int candidate, ReadOnlySpan<double> weights)
    {
        var trait = answered.Trait;
        Trait = trait.Trait.Id;
        if (answered.AnswerCount == 1 && AnswerTo(evidence, trait) is { Sure: Sureness.Sure } only) FillSure(guide, trait, only, candidate, weights);
        else FillSeveral(guide, evidence, trait, candidate, weights);
        var seen = Ratio[0];
        for (var o = 0; o < Count; o++)
        {
            Ratio[o] = seen / Ratio[o];
            for (var i = o * Width; i < (o + 1) * Width; i++) Scaled[i] = _probability[i] * Ratio[o];
        }
    }

    /// <summary>Makes ready for <see cref="Draw"/>.</summary>
    public void SumUp(int forms)
    {
        _slots = WidthOf(Count);
        if (_upTo.Length < forms * _slots) _upTo = new double[forms * _slots];
        for (var form = 0; form < forms; form++)
        {
            var row = _upTo.AsSpan(form * _slots, _slots);
            var sum = 0.0;
            for (var o = 0; o < Count - 1; o++) row[o] = sum += _probability[(o * Width) + form];
            // The last outcome takes what rounding leaves.
            row[(Count - 1)..].Fill(double.PositiveInfinity);
        }
    }

    /// <summary>The outcome of a plant of a form, by a number from 0 up to 1: as many outcomes lie before it as sums do not exceed the number.</summary>
    public int Draw(int form, double u)
    {
        // All are compared, without a branch: a search would mostly guess wrong where to stop.
        var limit = new Vector<double>(u);
        Vector<long> passed = default;
        for (var (at, end) = (form * _slots, (form + 1) * _slots); at < end; at += Vector<double>.Count) passed -= Vector.LessThanOrEqual(new Vector<double>(_upTo, at), limit);
        return (int)Vector.Sum(passed);
    }

    private void Start(int count, int forms)
    {
        Count = count;
        Width = WidthOf(forms);
        if (_probability.Length < count * Width) (_probability, Scaled) = (new double[count * Width], new double[count * Width]);
        if (Ratio.Length < count) Ratio = new double[count];
        _probability.AsSpan(0, count * Width).Clear();
        Ratio.AsSpan(0, count).Clear();
    }

    /// <summary>Forms rounded up to whole vectors.</summary>
    public static int WidthOf(int forms) => (forms + 7) / 8 * 8;

    private static Answer AnswerTo(Evidence evidence, CompiledTrait trait)
    {
        foreach (var answer in evidence.Answers)
        {
            if (answer.Trait == trait.Trait.Id) return answer;
        }

        throw new InvalidOperationException("weighed evidence always has its answers");
    }

    /// <summary>The common case: one sure answer, whose probabilities stand ready in the compiled guide.</summary>
    private void FillSure(CompiledGuide guide, CompiledTrait trait, Answer answer, int candidate, ReadOnlySpan<double> weights)
    {
        var (first, end) = (guide.FirstForm[candidate], guide.FirstForm[candidate + 1]);
        Span<bool> named = stackalloc bool[trait.Answers];
        Name(trait, answer, named);
        var count = 1;
        foreach (var isNamed in named) count += isNamed ? 0 : 1;
        Start(count, end - first);
        var mass = Rows.Dot(weights, trait.Known);
        var next = 1;
        for (var y = 0; y < trait.Answers; y++)
        {
            var o = named[y] ? 0 : next++;
            var phi = trait.PhiRow(y);
            var pool = mass > 0 ? Rows.Dot(weights, phi) / mass : trait.PhiPool[y];
            var broad = Likelihood.SomethingElse(pool, trait.PhiUniform[y]);
            Ratio[o] += broad;
            for (var i = 0; i < end - first; i++)
            {
                var f = first + i;
                _probability[(o * Width) + i] += f == guide.SomethingElse ? broad : trait.Known[f] == 0 ? pool : phi[f];
            }
        }
    }

    private void FillSeveral(CompiledGuide guide, Evidence evidence, CompiledTrait trait, int candidate, ReadOnlySpan<double> weights)
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
        Start(count, end - first);
        var broad = Broad(trait, pool);
        for (var o = 0; o < count; o++) Ratio[o] = Likelihood.Of(Looks(trait, options, o), broad);
        for (var f = first; f < end; f++)
        {
            var shares = Shares(guide, trait, f, pool);
            for (var o = 0; o < count; o++) _probability[(o * Width) + f - first] = Likelihood.Of(Looks(trait, options, o), shares);
        }
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
        Span<bool> named = stackalloc bool[trait.Answers];
        Name(trait, answer, named);
        var options = new List<double[]> { new double[trait.States] };
        for (var y = 0; y < trait.Answers; y++)
        {
            if (!named[y]) options.Add(new double[trait.States]);
            var option = named[y] ? options[0] : options[^1];
            for (var s = 0; s < trait.States; s++) option[s] += trait.Confusion[(int)answer.Sure][(s * trait.Answers) + y];
        }

        return options;
    }

    /// <summary>Marks the foreseen answers that an answer names.</summary>
    private static void Name(CompiledTrait trait, Answer answer, Span<bool> named)
    {
        named.Clear();
        if (trait.Scale is not { } scale)
        {
            for (var y = 0; y < named.Length; y++) named[y] = answer.States.Contains(trait.Trait.States[y].Id);
            return;
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
