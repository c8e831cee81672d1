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
    private readonly Dictionary<(string Of, string Trait), List<Cell>> _cells;
    private readonly Dictionary<(string Of, string Trait), List<CountRow>> _counts;

    public GuideCompiler(CompiledGuide compiled)
    {
        _compiled = compiled;
        _cells = compiled.Guide.Cells.GroupBy(c => (c.Of, c.Trait)).ToDictionary(g => g.Key, g => g.ToList());
        _counts = compiled.Guide.Counts.GroupBy(c => (c.Of, c.Trait)).ToDictionary(g => g.Key, g => g.ToList());
    }

    public CompiledTrait[] Compile() => [.. _compiled.Guide.Traits.Select((t, i) => Compile(t, i))];

    private CompiledTrait Compile(Trait trait, int index)
    {
        var perForm = new double[_compiled.Forms.Length][];
        var scale = trait.Kind == TraitKind.Measured ? FillMeasured(trait, perForm) : null;
        if (scale is null) FillStates(trait, perForm);
        ShareAmongSiblings(perForm);
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

        double[][] confusion = scale is null
            ? [ObserverTables.ForStates(trait, _compiled.Reliability(0)), ObserverTables.ForStates(trait, _compiled.Reliability(1)), ObserverTables.ForStates(trait, _compiled.Reliability(2))]
            : [scale.AnswerTable(0, _compiled.Reliability(0)), scale.AnswerTable(1, _compiled.Reliability(1)), scale.AnswerTable(2, _compiled.Reliability(2))];
        var answers = scale is null ? states : MeasuredScale.AnswerBins;
        var phi = Blur(theta, confusion[0], states, answers, stride);
        return new CompiledTrait
        {
            Index = index,
            Stride = stride,
            Trait = trait,
            States = states,
            Answers = answers,
            Theta = theta,
            Phi = phi,
            PhiEntropy = Entropies(phi, answers, stride),
            Known = known,
            Missing = [.. Enumerable.Range(0, perForm.Length).Where(f => known[f] == 0 && f != _compiled.SomethingElse)],
            ThetaPool = Pool(theta, states, known, stride),
            PhiUniform = [.. Enumerable.Range(0, answers).Select(y => Enumerable.Range(0, states).Average(s => confusion[0][(s * answers) + y]))],
            PhiPool = Pool(phi, answers, known, stride),
            Confusion = confusion,
            Scale = scale,
        };
    }

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

    private static double[] Entropies(double[] phi, int answers, int stride)
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

        return entropy;
    }

    private void FillStates(Trait trait, double[][] perForm)
    {
        for (var f = 0; f < perForm.Length; f++)
        {
            var (cells, counts) = Rows(_compiled.Forms[f], trait.Id);
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
                strength = Math.Max(strength, w);
            }

            alpha[IndexOf(trait, state.Key!)] = sum / weight;
        }

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

    private static int IndexOf(Trait trait, string state)
    {
        for (var s = 0; s < trait.States.Count; s++)
        {
            if (trait.States[s].Id == state) return s;
        }

        throw new ArgumentException($"state {state} is not one of {trait.Id}; compile only guides that were read without faults", nameof(state));
    }

    private MeasuredScale? FillMeasured(Trait trait, double[][] perForm)
    {
        var fits = new (double MeanLog, double SdLog)?[perForm.Length];
        var made = new Dictionary<(List<Cell>?, List<CountRow>?), (double, double)>();
        for (var f = 0; f < perForm.Length; f++)
        {
            var rows = Rows(_compiled.Forms[f], trait.Id);
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

    /// <summary>A form's own cells, else the first of its fall-backs that has some, else its candidate's; counts of the form, else of the candidate.</summary>
    private (List<Cell>? Cells, List<CountRow>? Counts) Rows(CompiledForm form, string trait)
    {
        var candidate = _compiled.Guide.Candidates[form.Candidate].Id;
        var cells = _cells.GetValueOrDefault((form.Key, trait));
        foreach (var from in form.Form?.From ?? [])
        {
            if (cells is not null) break;
            cells = _cells.GetValueOrDefault((from, trait));
        }

        cells ??= _cells.GetValueOrDefault((candidate, trait));
        var counts = _counts.GetValueOrDefault((form.Key, trait)) ?? _counts.GetValueOrDefault((candidate, trait));
        return (cells, counts);
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
}
