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
    private readonly Span<double> _part;

    private Forecast(Belief belief, CompiledTrait trait, Prior prior, ReadOnlySpan<double> phi, ReadOnlySpan<double> entropy, bool isWhole, Span<double> scratch)
    {
        _belief = belief;
        _trait = trait;
        _prior = prior;
        _phi = phi;
        _entropy = entropy;
        _isWhole = isWhole;
        var n = Padded(trait);
        scratch = scratch[..ScratchFor(trait, belief.Guide)];
        scratch.Clear();
        _pool = scratch[..n];
        _other = scratch.Slice(n, n);
        _sum = scratch.Slice(2 * n, n);
        _mix = scratch[(3 * n)..^belief.Guide.Stride];
        _part = scratch[^belief.Guide.Stride..];
        FillPool();
    }

    /// <summary>How much scratch a forecast needs.</summary>
    public static int ScratchFor(CompiledTrait trait, CompiledGuide guide) => ((3 + Math.Max(1, guide.ManyFormed.Length)) * Padded(trait)) + guide.Stride;

    /// <summary>Answers rounded up to whole vectors, so that sums over them need no rest; the rest is 0.</summary>
    private static int Padded(CompiledTrait trait) => (trait.Answers + 7) / 8 * 8;

    /// <summary>True where the odds before looking are the guide's own, for which its pools and their entropies stand ready.</summary>
    private readonly bool IsOwnPrior => !_prior.IsFlat && _prior.Among is null;

    /// <summary>P(answer), once <see cref="Bits()"/> was called.</summary>
    public readonly ReadOnlySpan<double> Answers => _sum[.._trait.Answers];

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

    /// <summary>Fills P(form, row and answer) of one row of the belief.</summary>
    public readonly void FillAfter(int answer, int r, Span<double> row)
    {
        var before = _belief.Row(r);
        if (OwnTrait(r) is { } own)
        {
            FillOwn(own);
            before.CopyTo(row);
            Rows.Scale(row, _mix[answer]);
            return;
        }

        Rows.Product(row, before, _phi.Slice(answer * _trait.Stride, _trait.Stride));
        AddUnknown(answer, before, row);
    }

    /// <summary>Expected information in bits between the hypotheses (candidate and packet together) and the answer.</summary>
    public readonly double Bits() => Bits([]);

    /// <summary>The same where the sums over whole rows stand ready, as <see cref="AddSums"/> made them for one row after the other; empty to make them here.</summary>
    public readonly double Bits(ReadOnlySpan<double> sums)
    {
        var conditional = 0.0;
        var whole = 0.0;
        var length = _trait.Answers + 1;
        _sum.Clear();
        for (var r = 0; r < _belief.RowCount; r++)
        {
            if (_belief.RowMass(r) < Negligible) continue;
            whole += _belief.RowMass(r);
            conditional += OwnTrait(r) is { } own
                ? TakeOwn(own, _belief.RowMass(r))
                : TakeRow(_belief.Row(r), sums.IsEmpty ? sums : sums.Slice(r * length, length));
        }

        return whole > 0 ? Math.Max(0, (EntropyOf(_sum, whole) - (conditional / whole)) / Math.Log(2)) : 0;
    }

    /// <summary>Adds a part of a row of the belief to the sums of a first answer: P(answer) for each answer, then the forms' own entropies.</summary>
    /// <param name="part">Whole vectors of the row.</param>
    /// <param name="start">Where in the row the part begins.</param>
    /// <param name="sums">As many as answers and one more.</param>
    public static void AddSums(ReadOnlySpan<double> part, CompiledTrait trait, int start, Span<double> sums)
    {
        Rows.AddDots(part, trait.Phi.AsSpan(start), trait.Stride, sums[..trait.Answers]);
        sums[trait.Answers] += Rows.Dot(part, trait.PhiEntropy.AsSpan(start, part.Length));
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
        if (guide.ManyFormed.Length == 0 && end == first + 1) return LeaderAfter(first);
        for (var y = first; y < end; y++)
        {
            var phi = _phi.Slice(y * _trait.Stride, _trait.Stride);
            if (y == first) Rows.Product(row, total, phi);
            else Rows.AddProduct(row, total, phi);
            AddUnknown(y, total, row);
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

    /// <summary>The same for one answer where every candidate is one form: in a single pass that writes nothing.</summary>
    private readonly (int Candidate, double Mass, double All) LeaderAfter(int answer)
    {
        var total = _belief.Total;
        var (leader, most, all) = Rows.LargestProduct(total, _phi.Slice(answer * _trait.Stride, _trait.Stride));
        if (_isWhole) return (leader, most, all);
        foreach (var f in _trait.Missing) Offer(f, total[f] * _pool[answer]);
        if (_belief.Guide.SomethingElse is >= 0 and var other) Offer(other, total[other] * _other[answer]);
        return (leader, most, all);

        void Offer(int form, double mass)
        {
            all += mass;
            if (mass > most || (mass == most && form < leader)) (leader, most) = (form, mass);
        }
    }

    private readonly double Mass(int candidate)
    {
        var mass = 0.0;
        for (var f = _belief.Guide.FirstForm[candidate]; f < _belief.Guide.FirstForm[candidate + 1]; f++) mass += _belief.Total[f];
        return mass;
    }

    /// <summary>Shares of forms without cells, and of "something else": the guide's own, unless other candidates or odds are in play before looking.</summary>
    private readonly void FillPool()
    {
        if (_isWhole) return;
        var guide = _belief.Guide;
        if (_trait.Missing.Length == 0 && guide.SomethingElse < 0) return;
        var mass = IsOwnPrior ? 0 : Rows.Dot(_belief.Base, _trait.Known);
        if (!(mass > 0))
        {
            _trait.PhiPool.CopyTo(_pool);
            _trait.PhiOther.CopyTo(_other);
            return;
        }

        for (var y = 0; y < _trait.Answers; y++)
        {
            _pool[y] = Rows.Dot(_belief.Base, _trait.PhiRow(y)) / mass;
            _other[y] = Likelihood.SomethingElse(_pool[y], _trait.PhiUniform[y]);
        }
    }

    private readonly double TakeRow(ReadOnlySpan<double> row, ReadOnlySpan<double> sums)
    {
        var guide = _belief.Guide;
        var conditional = TakeMixtures(row);
        if (sums.IsEmpty)
        {
            Rows.AddDots(row, _phi, _trait.Stride, _sum[.._trait.Answers]);
            conditional += Rows.Dot(row, _entropy);
        }
        else
        {
            for (var y = 0; y < _trait.Answers; y++) _sum[y] += sums[y];
            conditional += sums[^1];
        }

        if (_isWhole) return conditional;
        var missing = 0.0;
        foreach (var f in _trait.Missing) missing += row[f];
        conditional += AddFixed(_pool, missing, IsOwnPrior ? _trait.PoolEntropy : null);
        if (guide.SomethingElse >= 0) conditional += AddFixed(_other, row[guide.SomethingElse], IsOwnPrior ? _trait.OtherEntropy : null);
        return conditional;
    }

    /// <summary>Mass times entropy of the candidates of several forms: each is one hypothesis, and its answers are its mixture's.</summary>
    private readonly double TakeMixtures(ReadOnlySpan<double> row)
    {
        var (guide, stride, n) = (_belief.Guide, _trait.Stride, Padded(_trait));
        var conditional = 0.0;
        var used = 0;
        foreach (var c in guide.ManyFormed)
        {
            var (first, length) = (guide.FirstForm[c], guide.FirstForm[c + 1] - guide.FirstForm[c]);
            if (!_isWhole && _trait.Known[first] == 0) continue;
            var mass = 0.0;
            foreach (var p in row.Slice(first, length)) mass += p;
            if (mass < Negligible) continue;
            // Whole vectors that hold the candidate's forms, the others' entries 0.
            var start = first / Rows.VectorLength * Rows.VectorLength;
            var part = _part[..(Rows.Whole(first + length) - start)];
            part.Clear();
            row.Slice(first, length).CopyTo(part[(first - start)..]);
            _mix.Slice(used, n).Clear();
            Rows.AddDots(part, _phi[start..], stride, _mix.Slice(used, _trait.Answers));
            conditional += mass * Math.Log(mass);
            used += n;
        }

        return conditional - Rows.SumXLogX(_mix[..used]);
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

        return mass * EntropyOf(_mix[..Padded(_trait)], mass);
    }

    private readonly double AddFixed(ReadOnlySpan<double> shares, double mass, double? entropy = null)
    {
        if (mass < Negligible) return 0;
        Rows.AddScaled(_sum, shares, mass);
        return mass * (entropy ?? -Rows.SumXLogX(shares));
    }

    /// <summary>Adds what the table leaves out: forms without cells, and "something else".</summary>
    private readonly void AddUnknown(int answer, ReadOnlySpan<double> before, Span<double> row)
    {
        if (_isWhole) return;
        foreach (var f in _trait.Missing) row[f] += before[f] * _pool[answer];
        if (_belief.Guide.SomethingElse is >= 0 and var other) row[other] += before[other] * _other[answer];
    }

    private readonly OwnTrait? OwnTrait(int r) => r == 0 ? null : _prior.Origin!.Packets[r - 1].Own(_trait.Trait);

    private readonly double TakeOwn(OwnTrait own, double mass)
    {
        FillOwn(own);
        return AddFixed(_mix[..Padded(_trait)], mass);
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

    /// <summary>Entropy in nats of shares that sum to <paramref name="mass"/>; whole vectors long.</summary>
    private static double EntropyOf(ReadOnlySpan<double> shares, double mass) => Math.Log(mass) - (Rows.SumXLogX(shares) / mass);
}
