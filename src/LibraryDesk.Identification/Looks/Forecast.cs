using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Looks;

/// <summary>
/// What the next answer to one trait would be under each form, and how much it is expected to tell. Expected information is the mutual
/// information of answer and hypothesis (Lindley 1956), reckoned from the answers' side: H(answer) - sum over hypotheses of p H(answer | hypothesis),
/// so that a form's own entropy, which never changes, is read from the compiled guide.
/// </summary>
internal ref struct Forecast
{
    /// <summary>Hypotheses less likely than this add less to the sum than rounding does to the rest.</summary>
    private const double Negligible = 1e-12;

    private readonly Belief _belief;
    private readonly CompiledTrait _trait;
    private readonly Prior _prior;
    private readonly ReadOnlySpan<double> _phi;
    private readonly ReadOnlySpan<double> _entropy;
    private readonly bool _isWhole;
    private readonly Span<double> _pool;
    private readonly Span<double> _other;
    private readonly Span<double> _sum;
    private readonly Span<double> _mix;

    private Forecast(Belief belief, CompiledTrait trait, Prior prior, ReadOnlySpan<double> phi, ReadOnlySpan<double> entropy, bool isWhole, Span<double> scratch)
    {
        _belief = belief;
        _trait = trait;
        _prior = prior;
        _phi = phi;
        _entropy = entropy;
        _isWhole = isWhole;
        var n = trait.Answers;
        _pool = scratch[..n];
        _other = scratch.Slice(n, n);
        _sum = scratch.Slice(2 * n, n);
        _mix = scratch.Slice(3 * n, n);
        _sum.Clear();
        FillPool();
    }

    /// <summary>How much scratch a forecast needs.</summary>
    public static int ScratchFor(CompiledTrait trait) => 4 * trait.Answers;

    /// <summary>P(answer), once <see cref="Bits"/> was called.</summary>
    public readonly ReadOnlySpan<double> Answers => _sum;

    /// <summary>The answer to a trait that nobody has answered.</summary>
    public static Forecast First(Belief belief, CompiledTrait trait, Prior prior, Span<double> scratch) =>
        new(belief, trait, prior, trait.Phi, trait.PhiEntropy, isWhole: false, scratch);

    /// <summary>A further answer to a trait, its rows given the answers so far; see <see cref="SecondLook"/>.</summary>
    public static Forecast Again(Belief belief, CompiledTrait trait, Prior prior, SecondLook second, Span<double> scratch) =>
        new(belief, trait, prior, second.Phi, second.Entropy, isWhole: true, scratch);

    /// <summary>P(answer | form), the neutral mean where the form has no cells.</summary>
    public readonly double Given(int answer, int form)
    {
        if (!_isWhole && form == _belief.Guide.SomethingElse) return _other[answer];
        if (!_isWhole && _trait.Known[form] == 0) return _pool[answer];
        return _phi[(answer * _trait.Stride) + form];
    }

    /// <summary>Expected information in bits between the hypotheses (candidate and packet together) and the answer.</summary>
    public readonly double Bits()
    {
        var conditional = 0.0;
        var whole = 0.0;
        _sum.Clear();
        for (var r = 0; r < _belief.RowCount; r++)
        {
            if (_belief.RowMass(r) < Negligible) continue;
            whole += _belief.RowMass(r);
            conditional += OwnTrait(r) is { } own ? TakeOwn(own, _belief.RowMass(r)) : TakeRow(_belief.Row(r));
        }

        return whole > 0 ? Math.Max(0, (EntropyOf(_sum, whole) - (conditional / whole)) / Math.Log(2)) : 0;
    }

    /// <summary>Expected information in bits between two candidates only.</summary>
    public readonly double BitsBetween(int a, int b)
    {
        _sum.Clear();
        var pa = Mass(a);
        var pb = Mass(b);
        if (pa + pb < 1e-300) return 0;
        var conditional = TakeCandidate(_belief.Total, a, pa) + TakeCandidate(_belief.Total, b, pb);
        return Math.Max(0, (EntropyOf(_sum, pa + pb) - (conditional / (pa + pb))) / Math.Log(2));
    }

    /// <summary>The candidate that leads after an answer in the range, P(that candidate and such an answer), and P(such an answer).</summary>
    /// <param name="row">Scratch as long as a row.</param>
    public readonly (int Candidate, double Mass, double All) LeaderAfter(int first, int end, Span<double> row)
    {
        var guide = _belief.Guide;
        var total = _belief.Total;
        row.Clear();
        for (var y = first; y < end; y++)
        {
            Rows.AddProduct(row, total, _phi.Slice(y * _trait.Stride, _trait.Stride));
            if (_isWhole) continue;
            foreach (var f in _trait.Missing) row[f] += total[f] * _pool[y];
            if (guide.SomethingElse >= 0) row[guide.SomethingElse] += total[guide.SomethingElse] * _other[y];
        }

        if (guide.ManyFormed.Length == 0)
        {
            var most = Rows.Max(row);
            return (row.IndexOf(most), most, Rows.Sum(row));
        }

        var leader = (Candidate: 0, Mass: -1.0, All: 0.0);
        for (var c = 0; c < guide.FirstForm.Length - 1; c++)
        {
            var mass = 0.0;
            for (var f = guide.FirstForm[c]; f < guide.FirstForm[c + 1]; f++) mass += row[f];
            leader.All += mass;
            if (mass > leader.Mass) (leader.Candidate, leader.Mass) = (c, mass);
        }

        return leader;
    }

    private readonly double Mass(int candidate)
    {
        var mass = 0.0;
        for (var f = _belief.Guide.FirstForm[candidate]; f < _belief.Guide.FirstForm[candidate + 1]; f++) mass += _belief.Total[f];
        return mass;
    }

    private readonly void FillPool()
    {
        if (_isWhole) return;
        var guide = _belief.Guide;
        if (_trait.Missing.Length == 0 && guide.SomethingElse < 0) return;
        var mass = _prior.IsFlat || _prior.Among is not null ? Rows.Dot(_belief.Base, _trait.Known) : 0;
        for (var y = 0; y < _trait.Answers; y++)
        {
            _pool[y] = mass > 0 ? Rows.Dot(_belief.Base, _trait.PhiRow(y)) / mass : _trait.PhiPool[y];
            _other[y] = Likelihood.SomethingElse(_pool[y], _trait.PhiUniform[y]);
        }
    }

    private readonly double TakeRow(ReadOnlySpan<double> row)
    {
        var guide = _belief.Guide;
        for (var y = 0; y < _trait.Answers; y++) _sum[y] += Rows.Dot(row, _phi.Slice(y * _trait.Stride, _trait.Stride));
        var conditional = Rows.Dot(row, _entropy);
        foreach (var c in guide.ManyFormed) conditional += CorrectForMixture(row, c);
        if (_isWhole) return conditional;
        var missing = 0.0;
        foreach (var f in _trait.Missing) missing += row[f];
        conditional += AddFixed(_pool, missing);
        if (guide.SomethingElse >= 0) conditional += AddFixed(_other, row[guide.SomethingElse]);
        return conditional;
    }

    /// <summary>A candidate of several forms is one hypothesis: its answers are the mixture's, and so is their entropy.</summary>
    private readonly double CorrectForMixture(ReadOnlySpan<double> row, int candidate)
    {
        var (first, end) = (_belief.Guide.FirstForm[candidate], _belief.Guide.FirstForm[candidate + 1]);
        if (!_isWhole && _trait.Known[first] == 0) return 0;
        double mass = 0, apart = 0;
        for (var f = first; f < end; f++)
        {
            mass += row[f];
            apart += row[f] * _entropy[f];
        }

        if (mass < Negligible) return 0;
        for (var y = 0; y < _trait.Answers; y++)
        {
            var p = 0.0;
            var phi = _phi.Slice((y * _trait.Stride) + first, end - first);
            for (var i = 0; i < phi.Length; i++) p += row[first + i] * phi[i];
            _mix[y] = p;
        }

        return (mass * EntropyOf(_mix, mass)) - apart;
    }

    private readonly double TakeCandidate(ReadOnlySpan<double> row, int candidate, double mass)
    {
        if (mass < 1e-300) return 0;
        for (var y = 0; y < _trait.Answers; y++)
        {
            _mix[y] = 0;
            for (var f = _belief.Guide.FirstForm[candidate]; f < _belief.Guide.FirstForm[candidate + 1]; f++) _mix[y] += row[f] * Given(y, f);
            _sum[y] += _mix[y];
        }

        return mass * EntropyOf(_mix, mass);
    }

    private readonly double AddFixed(ReadOnlySpan<double> shares, double mass)
    {
        if (mass < Negligible) return 0;
        for (var y = 0; y < shares.Length; y++) _sum[y] += mass * shares[y];
        return mass * EntropyOf(shares, 1);
    }

    private readonly OwnTrait? OwnTrait(int r)
    {
        if (r == 0 || _trait.Scale is not null) return null;
        foreach (var own in _prior.Origin!.Packets[r - 1].OwnTraits)
        {
            if (own.Trait == _trait.Trait.Id) return own;
        }

        return null;
    }

    /// <summary>P(answer) of a packet's lot that has the trait described of itself; null for any other row.</summary>
    public readonly double? OwnAnswer(int r, int answer)
    {
        if (OwnTrait(r) is not { } own) return null;
        FillOwn(own);
        return _mix[answer];
    }

    private readonly double TakeOwn(OwnTrait own, double mass)
    {
        FillOwn(own);
        return AddFixed(_mix, mass);
    }

    private readonly void FillOwn(OwnTrait own)
    {
        Span<double> shares = stackalloc double[_trait.States];
        Belief.OwnShares(own, _trait, shares);
        for (var y = 0; y < _trait.Answers; y++)
        {
            _mix[y] = 0;
            for (var s = 0; s < shares.Length; s++) _mix[y] += shares[s] * _trait.Confusion[0][(s * _trait.Answers) + y];
        }
    }

    /// <summary>Entropy in nats of shares that sum to <paramref name="mass"/>.</summary>
    private static double EntropyOf(ReadOnlySpan<double> shares, double mass)
    {
        var entropy = 0.0;
        foreach (var share in shares)
        {
            if (share > 0) entropy -= share * Math.Log(share);
        }

        return (entropy / mass) + Math.Log(mass);
    }
}
