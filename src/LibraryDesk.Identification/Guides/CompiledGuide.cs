namespace LibraryDesk.Identification.Guides;

/// <summary>A crop guide made ready for reckoning. Immutable; compile once and share between threads.</summary>
public sealed class CompiledGuide
{
    private readonly Dictionary<string, int> _traitIndex;
    private readonly Dictionary<string, int> _candidateIndex;
    private readonly Lazy<Dictionary<(int, int), string[]>> _sources;

    internal CompiledGuide(CropGuide guide)
    {
        Guide = guide;
        _traitIndex = guide.Traits.Select((t, i) => (t.Id, i)).ToDictionary(x => x.Id, x => x.i);
        _candidateIndex = guide.Candidates.Select((c, i) => (c.Id, i)).ToDictionary(x => x.Id, x => x.i);
        _sources = new Lazy<Dictionary<(int, int), string[]>>(FindSources);
        Observer = guide.Observer ?? ObserverReliability.Usual;
        var forms = new List<CompiledForm>();
        FirstForm = new int[guide.Candidates.Count + 1];
        SomethingElse = -1;
        for (var c = 0; c < guide.Candidates.Count; c++)
        {
            FirstForm[c] = forms.Count;
            var candidate = guide.Candidates[c];
            if (candidate.Kind == CandidateKind.SomethingElse) SomethingElse = forms.Count;
            if (candidate.Forms.Count == 0) forms.Add(new CompiledForm(c, candidate.Id, candidate.Name, 1, null));
            foreach (var form in candidate.Forms) forms.Add(new CompiledForm(c, candidate.Id + "/" + form.Id, form.Name, form.Weight, form));
        }

        FirstForm[^1] = forms.Count;
        Forms = [.. forms];
        Stride = (forms.Count + 7) / 8 * 8;
        BasePrior = new double[Stride];
        for (var f = 0; f < Forms.Length; f++) BasePrior[f] = guide.Candidates[Forms[f].Candidate].Prior * Forms[f].Weight;
        ManyFormed = [.. Enumerable.Range(0, guide.Candidates.Count).Where(c => FirstForm[c + 1] - FirstForm[c] > 1)];
        Traits = new GuideCompiler(this).Compile();
    }

    private CompiledGuide(CompiledGuide made, CropGuide guide)
    {
        Guide = guide;
        _traitIndex = made._traitIndex;
        _candidateIndex = made._candidateIndex;
        _sources = made._sources;
        Observer = made.Observer;
        FirstForm = made.FirstForm;
        SomethingElse = made.SomethingElse;
        Forms = [.. made.Forms.Select(f => f.Form is null
            ? f with { Name = guide.Candidates[f.Candidate].Name }
            : Renamed(f, guide.Candidates[f.Candidate].Forms.First(x => x.Id == f.Form.Id)))];
        Stride = made.Stride;
        BasePrior = made.BasePrior;
        ManyFormed = made.ManyFormed;
        Traits = [.. made.Traits.Select(t => t.Worded(guide.Traits[t.Index]))];
    }

    /// <summary>The guide as written, or as translated.</summary>
    public CropGuide Guide { get; }

    internal ObserverReliability Observer { get; }

    internal CompiledForm[] Forms { get; }

    /// <summary>First form of each candidate, with one entry more at the end.</summary>
    internal int[] FirstForm { get; }

    /// <summary>Row length of all tables: the number of forms rounded up.</summary>
    internal int Stride { get; }

    /// <summary>The form that stands for "something else", or -1.</summary>
    internal int SomethingElse { get; }

    /// <summary>Candidates of two forms or more.</summary>
    internal int[] ManyFormed { get; }

    internal double[] BasePrior { get; }

    internal CompiledTrait[] Traits { get; }

    /// <summary>Makes a guide ready. The guide must have come through <see cref="GuideFile"/> without faults.</summary>
    public static CompiledGuide Compile(CropGuide guide) => new(guide);

    /// <summary>The same guide in other words, see <see cref="GuideTranslation"/>. All odds are the same; the tables are shared, so it costs little.</summary>
    public CompiledGuide Translate(Func<string, string> say) => new(this, GuideTranslation.Of(Guide, say));

    /// <summary>The trait of that id, or null; faster than <see cref="CropGuide.FindTrait"/>.</summary>
    public Trait? FindTrait(string id) => _traitIndex.TryGetValue(id, out var i) ? Guide.Traits[i] : null;

    /// <summary>How reliable answers to a trait are taken to be, counts of answers added; null where the guide has no such trait.</summary>
    public ObserverReliability? ReliabilityOf(string trait) => _traitIndex.TryGetValue(trait, out var t) ? Traits[t].Observer : null;

    /// <summary>How often a candidate shows each state of an unordered or ordered trait, in the order of the trait's states, its forms weighed
    /// together; null where the guide does not know, or for a measured trait.</summary>
    /// <param name="form">A form id of the candidate, or null for all its forms.</param>
    public IReadOnlyList<double>? Frequencies(string candidate, string? form, string trait)
    {
        if (!_candidateIndex.TryGetValue(candidate, out var c) || !_traitIndex.TryGetValue(trait, out var t) || Traits[t].Scale is not null) return null;
        return Mixed(c, form, Traits[t]);
    }

    /// <summary>The middle 80 % of a measured trait of a candidate, in the trait's unit; null where the guide does not know.</summary>
    /// <param name="form">A form id of the candidate, or null for all its forms.</param>
    public (double Low, double High)? UsualRange(string candidate, string? form, string trait)
    {
        if (!_candidateIndex.TryGetValue(candidate, out var c) || !_traitIndex.TryGetValue(trait, out var t)) return null;
        if (Traits[t].Scale is not { } scale || Mixed(c, form, Traits[t]) is not { } bins) return null;
        return (Quantile(scale, bins, 0.1), Quantile(scale, bins, 0.9));
    }

    /// <summary>Ids of the sources of a candidate's cells for a trait, its forms and profiles included.</summary>
    internal IReadOnlyList<string> SourcesOf(int candidate, int trait) => _sources.Value.GetValueOrDefault((candidate, trait)) ?? [];

    internal int TraitIndex(string id) => _traitIndex.TryGetValue(id, out var i) ? i : -1;

    internal int CandidateIndex(string id) => _candidateIndex.TryGetValue(id, out var i) ? i : -1;

    private static CompiledForm Renamed(CompiledForm made, Form form) => made with { Name = form.Name, Form = form };

    private Dictionary<(int, int), string[]> FindSources() => Guide.Cells
        .GroupBy(c => (CandidateIndex(c.Of.Split('/')[0]), TraitIndex(c.Trait)))
        .ToDictionary(g => g.Key, g => g.Select(c => c.Source).Distinct().ToArray());

    private double[]? Mixed(int candidate, string? form, CompiledTrait trait)
    {
        var mean = new double[trait.States];
        var weight = 0.0;
        for (var f = FirstForm[candidate]; f < FirstForm[candidate + 1]; f++)
        {
            if (trait.Known[f] == 0 || (form is not null && Forms[f].Form?.Id != form)) continue;
            weight += Forms[f].Weight;
            for (var s = 0; s < trait.States; s++) mean[s] += Forms[f].Weight * trait.ThetaRow(s)[f];
        }

        if (weight == 0) return null;
        for (var s = 0; s < mean.Length; s++) mean[s] /= weight;
        return mean;
    }

    private static double Quantile(MeasuredScale scale, double[] bins, double p)
    {
        var sum = 0.0;
        for (var b = 0; b < bins.Length; b++)
        {
            if (sum + bins[b] >= p) return Math.Exp(scale.EdgeLog(b) + ((p - sum) / bins[b] * (scale.EdgeLog(b + 1) - scale.EdgeLog(b))));
            sum += bins[b];
        }

        return Math.Exp(scale.HighLog);
    }
}

/// <summary>One form in the flat list of all forms.</summary>
/// <param name="Key">Candidate id, or <c>candidate/form</c>.</param>
/// <param name="Form">The form as written; null when the candidate is one form, itself.</param>
internal sealed record CompiledForm(int Candidate, string Key, string Name, double Weight, Form? Form);
