using System.Collections;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>
/// The candidates of a ranking. The likeliest stand ready; the long tail of a large guide is put in order when somebody first asks for it.
/// </summary>
internal sealed class CandidateRanking : IReadOnlyList<RankedCandidate>
{
    /// <summary>
    /// How many stand ready. Twenty seeds go to at most twenty candidates that are due one seed by themselves and to twenty of those behind them,
    /// so that nothing after this many ever gets one.
    /// </summary>
    private const int Ready = 40;

    private readonly CompiledGuide _guide;
    private readonly double[] _forms;
    private readonly RankedCandidate[] _head;
    private RankedCandidate[]? _all;

    /// <param name="forms">Posterior of every form, negative where the form is out of play; kept, not copied.</param>
    public CandidateRanking(CompiledGuide guide, double[] forms)
    {
        _guide = guide;
        _forms = forms;
        Span<double> keys = stackalloc double[Ready];
        Span<int> order = stackalloc int[Ready];
        var kept = 0;
        for (var c = 0; c < guide.FirstForm.Length - 1; c++)
        {
            if (!(forms[guide.FirstForm[c]] >= 0)) continue;
            var p = Probability(c);
            Count++;
            if (kept == Ready && !IsBefore(p, c, keys[^1], order[^1])) continue;
            if (kept < Ready) kept++;
            var at = kept - 1;
            for (; at > 0 && IsBefore(p, c, keys[at - 1], order[at - 1]); at--) (keys[at], order[at]) = (keys[at - 1], order[at - 1]);
            (keys[at], order[at]) = (p, c);
        }

        Span<OddsInTwenty> odds = stackalloc OddsInTwenty[kept];
        OddsInTwenty.Share(keys[..kept], odds);
        _head = new RankedCandidate[kept];
        for (var i = 0; i < kept; i++) _head[i] = Ranked(order[i], keys[i], odds[i]);
    }

    public int Count { get; }

    public RankedCandidate this[int index] => index < _head.Length ? _head[index] : All[index];

    private RankedCandidate[] All => _all ??= _head.Length == Count ? _head : OrderAll();

    public IEnumerator<RankedCandidate> GetEnumerator()
    {
        for (var i = 0; i < Count; i++) yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>What is still open between the candidates, in bits.</summary>
    public double EntropyBits()
    {
        Span<double> shares = stackalloc double[256];
        var sum = 0.0;
        var used = 0;
        for (var c = 0; c < _guide.FirstForm.Length - 1; c++)
        {
            if (!(_forms[_guide.FirstForm[c]] >= 0)) continue;
            shares[used++] = Probability(c);
            if (used < shares.Length) continue;
            sum += Rows.SumXLogX(shares);
            used = 0;
        }

        shares[used..].Clear();
        return Math.Max(0, -(sum + Rows.SumXLogX(shares)) / Math.Log(2));
    }

    private double Probability(int candidate)
    {
        var p = 0.0;
        for (var f = _guide.FirstForm[candidate]; f < _guide.FirstForm[candidate + 1]; f++) p += _forms[f];
        return p;
    }

    /// <summary>The likelier stands first, and of equal ones the smaller id, so that the order of the guide file never shows.</summary>
    private bool IsBefore(double p, int candidate, double other, int otherCandidate) =>
        p > other || (p == other && string.CompareOrdinal(_guide.Guide.Candidates[candidate].Id, _guide.Guide.Candidates[otherCandidate].Id) < 0);

    private RankedCandidate Ranked(int candidate, double probability, OddsInTwenty odds)
    {
        var c = _guide.Guide.Candidates[candidate];
        return new RankedCandidate(c.Id, c.Name, c.Kind, probability, odds);
    }

    private RankedCandidate[] OrderAll()
    {
        var keys = new double[Count];
        var order = new int[Count];
        var count = 0;
        for (var c = 0; c < _guide.FirstForm.Length - 1; c++)
        {
            if (!(_forms[_guide.FirstForm[c]] >= 0)) continue;
            keys[count] = -Probability(c);
            order[count++] = c;
        }

        Ranker.Order(keys, order, c => _guide.Guide.Candidates[c].Id);
        var all = new RankedCandidate[count];
        for (var i = 0; i < count; i++) all[i] = i < _head.Length ? _head[i] : Ranked(order[i], -keys[i], default);
        return all;
    }
}
