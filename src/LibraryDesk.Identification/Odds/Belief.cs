using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>
/// The reckoning itself: one row of form probabilities for "from none of the packets" and one for each packet. Buffers are kept per thread,
/// so a belief is good only until the next one is made on the same thread.
/// </summary>
internal sealed class Belief
{
    /// <summary>Share kept for a state that a lot's own description does not name.</summary>
    private const double OwnFloor = 0.02;

    [ThreadStatic]
    private static Belief? _ofThread;

    private (Evidence? Evidence, Prior? Prior) _made;
    private double[] _rows = [];
    private double[] _likelihood = [];
    private double[] _scratch = [];
    private double[] _mass = [];
    private double[] _rowEvidence = [];
    private double[] _base = [];
    private double[] _total = [];

    public CompiledGuide Guide { get; private set; } = null!;

    /// <summary>Rows: 0 for outside the packets, then the packets.</summary>
    public int RowCount { get; private set; }

    /// <summary>Prior of the forms without origin.</summary>
    public ReadOnlySpan<double> Base => _base.AsSpan(0, Guide.Stride);

    /// <summary>Posterior of the forms, whatever the packet.</summary>
    public ReadOnlySpan<double> Total => _total.AsSpan(0, Guide.Stride);

    /// <summary>Posterior of one row: its entries sum to <see cref="RowMass"/>.</summary>
    public ReadOnlySpan<double> Row(int r) => _rows.AsSpan(r * Guide.Stride, Guide.Stride);

    /// <summary>Posterior probability of a row.</summary>
    public double RowMass(int r) => _mass[r];

    /// <summary>P(answers | row), up to a factor that is the same for all rows.</summary>
    public double RowEvidence(int r) => _rowEvidence[r];

    /// <summary>The belief after all evidence. Ranking and planning ask for the same one after another, so the last one is kept.</summary>
    public static Belief Of(CompiledGuide guide, Evidence evidence, Prior prior)
    {
        var belief = _ofThread ??= new Belief();
        if (belief.Guide == guide && belief._made == (evidence, prior)) return belief;
        belief._made = default;
        belief.Start(guide, prior);
        var traits = evidence.Traits;
        for (var i = 0; i < traits.Length; i++)
        {
            belief.Take(traits[i], prior);
            if (i % 4 == 3) belief.Rescale();
        }

        belief.Close();
        belief._made = (evidence, prior);
        return belief;
    }

    /// <summary>
    /// Makes another belief the one after one more answer as foreseen: its rows, which sum to their masses, and the masses to P(answer); nothing
    /// else of it is filled.
    /// </summary>
    public void FillAfter(in Looks.Forecast forecast, int answer, Belief after)
    {
        var stride = Guide.Stride;
        (after.Guide, after.RowCount, after._base) = (Guide, RowCount, _base);
        Grow(ref after._rows, RowCount * stride);
        Grow(ref after._mass, RowCount);
        for (var r = 0; r < RowCount; r++)
        {
            var row = after._rows.AsSpan(r * stride, stride);
            forecast.FillAfter(answer, r, row);
            after._mass[r] = Rows.Sum(row);
        }
    }

    private void Start(CompiledGuide guide, Prior prior)
    {
        Guide = guide;
        var packets = prior.Origin?.Packets ?? [];
        RowCount = 1 + packets.Count;
        Grow(ref _rows, RowCount * guide.Stride);
        Grow(ref _likelihood, guide.Stride);
        Grow(ref _base, guide.Stride);
        Grow(ref _total, guide.Stride);
        Grow(ref _mass, RowCount);
        Grow(ref _rowEvidence, RowCount);
        var baseRow = _base.AsSpan(0, guide.Stride);
        PriorMass.FillBase(guide, prior, baseRow);
        baseRow.CopyTo(_rows);
        var weights = 0.0;
        for (var k = 0; k < packets.Count; k++)
        {
            var inPlay = PriorMass.FillPacket(guide, packets[k], baseRow, _rows.AsSpan((k + 1) * guide.Stride, guide.Stride));
            _mass[k + 1] = inPlay && packets[k].Weight > 0 ? packets[k].Weight : 0;
            weights += _mass[k + 1];
        }

        var lambda = weights > 0 ? Math.Clamp(prior.Origin!.Lambda, 0, 1) : 0;
        for (var k = 1; k < RowCount; k++) _mass[k] = weights > 0 ? _mass[k] / weights * lambda : 0;
        _mass[0] = 1 - lambda;
    }

    private void Take(TraitEvidence evidence, Prior prior)
    {
        Grow(ref _scratch, Guide.Stride * evidence.Looks.Length);
        var row = _likelihood.AsSpan(0, Guide.Stride);
        Likelihood.Fill(Guide, evidence, Base, row, _scratch);
        Rows.Multiply(_rows.AsSpan(0, Guide.Stride), row);
        for (var k = 1; k < RowCount; k++)
        {
            var packet = _rows.AsSpan(k * Guide.Stride, Guide.Stride);
            if (prior.Origin!.Packets[k - 1].Own(evidence.Trait.Trait) is { } own) Rows.Scale(packet, OwnLikelihood(own, evidence));
            else Rows.Multiply(packet, row);
        }
    }

    private double OwnLikelihood(OwnTrait own, TraitEvidence evidence)
    {
        Span<double> shares = stackalloc double[evidence.Trait.States];
        OwnShares(own, evidence.Trait, shares);
        return Math.Pow(Likelihood.Of(evidence.Looks, shares), Guide.Guide.Temper);
    }

    /// <summary>Fills a lot's own frequencies of the states of a trait.</summary>
    internal static void OwnShares(OwnTrait own, CompiledTrait trait, Span<double> shares)
    {
        var sum = 0.0;
        for (var s = 0; s < shares.Length; s++)
        {
            shares[s] = Math.Max(OwnFloor, own.Shares.GetValueOrDefault(trait.Trait.States[s].Id));
            sum += shares[s];
        }

        foreach (ref var share in shares) share /= sum;
    }

    /// <summary>Keeps products away from the smallest numbers; the common factor cancels.</summary>
    private void Rescale()
    {
        var all = _rows.AsSpan(0, RowCount * Guide.Stride);
        var max = Rows.Max(all);
        if (max > 0) Rows.Scale(all, 1 / max);
    }

    private void Close()
    {
        var total = _total.AsSpan(0, Guide.Stride);
        total.Clear();
        var sum = 0.0;
        for (var r = 0; r < RowCount; r++)
        {
            _rowEvidence[r] = Rows.Sum(Row(r));
            sum += _mass[r] * _rowEvidence[r];
        }

        for (var r = 0; r < RowCount; r++)
        {
            var row = _rows.AsSpan(r * Guide.Stride, Guide.Stride);
            Rows.Scale(row, sum > 0 ? _mass[r] / sum : 0);
            _mass[r] = sum > 0 ? _mass[r] * _rowEvidence[r] / sum : 0;
            Rows.AddScaled(total, row, 1);
        }
    }

    private static void Grow(ref double[] buffer, int length)
    {
        if (buffer.Length < length) buffer = new double[length];
    }
}
