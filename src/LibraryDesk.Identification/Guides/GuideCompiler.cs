using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Guides;

/// <summary>Turns words, shares and counts into tables of frequencies.</summary>
internal sealed class GuideCompiler
{
    /// <summary>Least frequency of a state in a published description: biology only, observer error stands elsewhere.</summary>
    private const double Floor = 0.002;

    /// <summary>Plants that a worded frequency is worth when determined cases are added to it.</summary>
    private const double WordStrength = 8;

    private const double MostCounted = 100;

    /// <summary>Least mass of one of 64 bins; the whole floor of a measured trait is about as much as that of a state.</summary>
    private const double BinFloor = 2e-5;

    private readonly CompiledGuide _compiled;
    private readonly FormCells _cells;
    private readonly ILookup<string, AnswerCount> _answers;

    public GuideCompiler(CompiledGuide compiled)
    {
        _compiled = compiled;
        _answers = compiled.Guide.Answers.ToLookup(c => c.Trait);
        _cells = new FormCells(compiled.Guide);
    }

    public CompiledTrait[] Compile() => [.. _compiled.Guide.Traits.Select((t, i) => Compile(t, i))];

    private CompiledTrait Compile(Trait trait, int index)
    {
        var perForm = new double[_compiled.Forms.Length][];
        var scale = trait.Kind == TraitKind.Measured ? FillMeasured(trait, perForm) : null;
        if (scale is null) FillStates(trait, perForm);
        ShareAmongSiblings(perForm);
        LeanOnSiblings(perForm);
        var states = scale is null ? trait.States.Count : MeasuredScale.Bins;
        var stride = _compiled.Stride;
        var theta = new double[states * stride];
        var known = new double[stride];
        for (var f = 0; f < perForm.Length; f++)
        {
            if (perForm[f] is not { } row) continue;
            known[f] = 1;
            for (var s = 0; s < states; s++) theta[(s * stride) + f] = row[s];
        }

        var observer = trait.Observer ?? _compiled.Observer;
        if (_answers[trait.Id].ToList() is { Count: > 0 } counts) observer = observer.With(counts);
        double[][] confusion = [.. Enum.GetValues<Sureness>().Select(sure => scale is null
            ? ObserverTables.ForStates(trait, observer.At(sure))
            : scale.AnswerTable((int)sure, observer.At(sure)))];
        var answers = scale is null ? states : MeasuredScale.AnswerBins;
        var phi = Blur(theta, confusion[0], states, answers, stride);
        var phiPool = Pool(phi, answers, known, stride);
        double[] phiUniform = [.. Enumerable.Range(0, answers).Select(y => Enumerable.Range(0, states).Average(s => confusion[0][(s * answers) + y]))];
        double[] phiOther = [.. phiPool.Zip(phiUniform, Likelihood.SomethingElse)];
        return new CompiledTrait
        {
            Index = index,
            Stride = stride,
            Trait = trait,
            States = states,
            Answers = answers,
            Theta = theta,
            Phi = phi,
            PhiEntropy = Entropies(phi, answers, stride, _compiled),
            Known = known,
            Missing = [.. Enumerable.Range(0, perForm.Length).Where(f => known[f] == 0 && f != _compiled.SomethingElse)],
            ThetaPool = Pool(theta, states, known, stride),
            PhiUniform = phiUniform,
            PhiPool = phiPool,
            PhiOther = phiOther,
            PoolEntropy = Entropy(phiPool),
            OtherEntropy = Entropy(phiOther),
            Confusion = confusion,
            Observer = observer,
            Singles = new TraitEvidence?[confusion.Length * trait.States.Count],
            Scale = scale,
        };
    }

    private static double Entropy(double[] shares) => -shares.Sum(p => p > 0 ? p * Math.Log(p) : 0);

    private double[] Pool(double[] table, int rows, double[] known, int stride)
    {
        var pool = new double[rows];
        var weight = 0.0;
        for (var f = 0; f < stride; f++) weight += _compiled.BasePrior[f] * known[f];
        for (var s = 0; s < rows; s++)
        {
            if (weight == 0)
            {
                pool[s] = 1.0 / rows;
                continue;
            }

            for (var f = 0; f < stride; f++) pool[s] += _compiled.BasePrior[f] * table[(s * stride) + f] / weight;
        }

        return pool;
    }

    private static double[] Blur(double[] theta, double[] confusion, int states, int answers, int stride)
    {
        var phi = new double[answers * stride];
        for (var s = 0; s < states; s++)
        {
            for (var y = 0; y < answers; y++)
            {
                var c = confusion[(s * answers) + y];
                if (c == 0) continue;
                for (var f = 0; f < stride; f++) phi[(y * stride) + f] += c * theta[(s * stride) + f];
            }
        }

        return phi;
    }

    /// <summary>Entropy of each form that is a hypothesis of its own; forms of one candidate are reckoned together when their odds are known.</summary>
    private static double[] Entropies(double[] phi, int answers, int stride, CompiledGuide guide)
    {
        var entropy = new double[stride];
        for (var y = 0; y < answers; y++)
        {
            for (var f = 0; f < stride; f++)
            {
                var p = phi[(y * stride) + f];
                if (p > 0) entropy[f] -= p * Math.Log(p);
            }
        }

        foreach (var c in guide.ManyFormed) entropy.AsSpan(guide.FirstForm[c], guide.FirstForm[c + 1] - guide.FirstForm[c]).Clear();
        return entropy;
    }

    private void FillStates(Trait trait, double[][] perForm)
    {
        for (var f = 0; f < perForm.Length; f++)
        {
            var (cells, counts) = _cells.Of(_compiled.Forms[f], trait.Id);
            if (cells is null && counts is null) continue;
            perForm[f] = Frequencies(trait, cells, counts);
        }
    }

    private double[] Frequencies(Trait trait, List<Cell>? cells, List<CountRow>? counts)
    {
        var k = trait.States.Count;
        var alpha = new double[k];
        if (cells is null) Array.Fill(alpha, _compiled.Guide.Smoothing);
        else Published(trait, cells, alpha);
        foreach (var row in counts ?? []) alpha[IndexOf(trait, row.State!)] += row.Count;
        var sum = alpha.Sum();
        for (var s = 0; s < k; s++) alpha[s] /= sum;
        return alpha;
    }

    /// <summary>Dirichlet parameters of the published cells: rows of one state are averaged by their strength, then all states scaled to sum to the strength.</summary>
    private static void Published(Trait trait, List<Cell> cells, double[] alpha)
    {
        var strength = 0.0;
        foreach (var state in cells.GroupBy(c => c.State))
        {
            double sum = 0, weight = 0;
            foreach (var cell in state)
            {
                var w = Strength(cell);
                sum += w * cell.Share;
                weight += w;
                if (!cell.IsLeftover) strength = Math.Max(strength, w);
            }

            alpha[IndexOf(trait, state.Key!)] = sum / weight;
        }

        if (strength == 0) strength = WordStrength;
        var total = alpha.Sum();
        for (var s = 0; s < alpha.Length; s++) alpha[s] = Math.Max(alpha[s] / total, Floor);
        total = alpha.Sum();
        for (var s = 0; s < alpha.Length; s++) alpha[s] *= strength / total;
    }

    private static double Strength(Cell cell)
    {
        var strength = cell.N is { } n ? Math.Min(n, MostCounted) : WordStrength;
        return cell.IsWeak ? strength / 2 : strength;
    }

    private static int IndexOf(Trait trait, string state) => trait.StateIndex(state) is >= 0 and var at
        ? at
        : throw new ArgumentException($"state {state} is not one of {trait.Id}; compile only guides that were read without faults", nameof(state));

    private MeasuredScale? FillMeasured(Trait trait, double[][] perForm)
    {
        var fits = new (double MeanLog, double SdLog)?[perForm.Length];
        var made = new Dictionary<(List<Cell>?, List<CountRow>?), (double, double)>();
        for (var f = 0; f < perForm.Length; f++)
        {
            var rows = _cells.Of(_compiled.Forms[f], trait.Id);
            if (rows.Cells is null && rows.Counts is null) continue;
            if (!made.TryGetValue(rows, out var fit)) made[rows] = fit = FitMeasured(rows.Cells, rows.Counts);
            fits[f] = fit;
        }

        var known = fits.Where(x => x is not null).Select(x => x!.Value).ToList();
        // A trait nobody has cells for keeps a nominal scale: it is neutral whatever is answered.
        var low = known.Count == 0 ? 0 : known.Min(x => x.MeanLog - (4 * x.SdLog));
        var high = known.Count == 0 ? Math.Log(1000) : known.Max(x => x.MeanLog + (4 * x.SdLog));
        var scale = new MeasuredScale(low - 0.3, high + 0.3);
        for (var f = 0; f < perForm.Length; f++)
        {
            if (fits[f] is not { } fit) continue;
            perForm[f] = new double[MeasuredScale.Bins];
            scale.Fill(fit.MeanLog, fit.SdLog, perForm[f], BinFloor);
        }

        return scale;
    }

    /// <summary>Published bands and measured plants together: moments weighed by how many plants each is worth.</summary>
    private static (double MeanLog, double SdLog) FitMeasured(List<Cell>? cells, List<CountRow>? counts)
    {
        var parts = new List<(double Weight, double Mean, double Sd)>();
        if (cells is not null)
        {
            var (mean, sd) = LogNormalFit.Fit(cells);
            parts.Add((WordStrength, mean, sd));
        }

        foreach (var row in counts ?? []) parts.Add((Math.Max(row.Count, 1e-9), row.MeanLog!.Value, row.SdLog!.Value));
        var weight = parts.Sum(p => p.Weight);
        var centre = parts.Sum(p => p.Weight * p.Mean) / weight;
        var variance = parts.Sum(p => p.Weight * ((p.Sd * p.Sd) + ((p.Mean - centre) * (p.Mean - centre)))) / weight;
        return (centre, Math.Sqrt(variance));
    }

    /// <summary>A form without cells whose siblings have some takes their weighted mean: inside its species it is neutral.</summary>
    private void ShareAmongSiblings(double[][] perForm)
    {
        for (var c = 0; c + 1 < _compiled.FirstForm.Length; c++)
        {
            var (first, end) = (_compiled.FirstForm[c], _compiled.FirstForm[c + 1]);
            var known = Enumerable.Range(first, end - first).Where(f => perForm[f] is not null).ToList();
            if (known.Count == 0 || known.Count == end - first) continue;
            var weight = known.Sum(f => _compiled.Forms[f].Weight);
            var mean = new double[perForm[known[0]].Length];
            foreach (var f in known)
            {
                for (var s = 0; s < mean.Length; s++) mean[s] += _compiled.Forms[f].Weight / weight * perForm[f][s];
            }

            for (var f = first; f < end; f++) perForm[f] ??= mean;
        }
    }

    /// <summary>Moves every form of a candidate a little towards the whole of it, see <see cref="CropGuide.FormSharing"/>.</summary>
    private void LeanOnSiblings(double[][] perForm)
    {
        var share = _compiled.Guide.FormSharing;
        if (share == 0) return;
        foreach (var c in _compiled.ManyFormed)
        {
            var (first, end) = (_compiled.FirstForm[c], _compiled.FirstForm[c + 1]);
            if (perForm[first] is null) continue;
            var whole = new double[perForm[first].Length];
            for (var f = first; f < end; f++)
            {
                for (var s = 0; s < whole.Length; s++) whole[s] += _compiled.Forms[f].Weight * perForm[f][s];
            }

            for (var f = first; f < end; f++) perForm[f] = [.. perForm[f].Select((p, s) => ((1 - share) * p) + (share * whole[s]))];
        }
    }
}
