using LibraryDesk.Lineage.Numbers;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>
/// The probability of what the plants showed under one or two causes. A cause that makes a share phi of the seed off gives, for each plant,
/// (1 - phi) L(name) + phi L(off); phi is integrated over its beta prior by Gauss-Legendre quadrature, which is exact for the polynomial that
/// the product is. A packing's packets are each off with probability phi and all plants of one packet share its fate, so both kinds from one
/// packet speak against a swap.
/// </summary>
internal sealed class Likelihood
{
    private readonly IReadOnlyList<TestedPlant> _plants;
    private readonly IReadOnlyList<Cause> _causes;
    private readonly Reach[][] _reach;
    private readonly double[] _logIfName;
    private readonly Dictionary<(SharePrior, int), (double Node, double LogWeight)[]> _nodes = [];
    private readonly Dictionary<(int Cause, int Without), double> _single = [];

    /// <param name="plants">The plants.</param>
    /// <param name="causes">The causes.</param>
    /// <param name="reach">How each cause (first index) reaches each plant (second).</param>
    public Likelihood(IReadOnlyList<TestedPlant> plants, IReadOnlyList<Cause> causes, Reach[][] reach)
    {
        (_plants, _causes, _reach) = (plants, causes, reach);
        _logIfName = plants.Select(plant => Math.Log(plant.IfName)).ToArray();
    }

    /// <summary>False once fates had to be reckoned apart.</summary>
    public bool IsExact { get; private set; } = true;

    /// <summary>The logarithm of the probability, leaving out one plant where asked.</summary>
    /// <param name="chosen">Indices of the causes: none, one or two.</param>
    /// <param name="without">The plant to leave out; -1 for none.</param>
    public double Log(int[] chosen, int without = -1)
    {
        if (chosen.Length == 0) return None(without);

        // What does not reach a plant says the same with and without it.
        if (without >= 0 && !Array.Exists(chosen, cause => _reach[cause][without].Touches)) return Log(chosen) - _logIfName[without];
        if (chosen.Length == 1)
        {
            if (!_single.TryGetValue((chosen[0], without), out var known)) known = _single[(chosen[0], without)] = Evaluate(chosen, without, null)[0];
            return known;
        }

        // Two causes that reach no plant in common say what each says alone.
        return AreApart(chosen) ? Log([chosen[0]], without) + Log([chosen[1]], without) - None(without) : Evaluate(chosen, without, null)[0];
    }

    /// <summary>The logarithms of the probability with further plants of one node besides: of each number of them that come up off, 0 to all.</summary>
    public double[] LogWith(int[] chosen, MorePlants more) => Evaluate(chosen, -1, more);

    private double None(int without) => _logIfName.Sum() - (without >= 0 ? _logIfName[without] : 0);

    private bool AreApart(int[] chosen)
    {
        for (var plant = 0; plant < _plants.Count; plant++)
        {
            if (_reach[chosen[0]][plant].Touches && _reach[chosen[1]][plant].Touches) return false;
        }

        return true;
    }

    private double[] Evaluate(int[] chosen, int without, MorePlants? more)
    {
        var groups = new FateGroups(chosen.Select(cause => _causes[cause].Kind).ToArray());
        var untouched = 0.0;
        for (var at = 0; at < _plants.Count; at++)
        {
            if (at == without) continue;
            var reach = Array.ConvertAll(chosen, cause => _reach[cause][at]);
            if (Array.Exists(reach, one => one.Touches)) groups.Add(_plants[at], reach);
            else untouched += _logIfName[at];
        }

        if (more is not null) groups.Add(more, Array.ConvertAll(chosen, cause => more.ReachOf(_causes[cause])));
        IsExact &= groups.SplitTheLargest();
        return Integrate(chosen, groups, more?.Count ?? 0, _plants.Count + (more?.Count ?? 0)).Select(log => log + untouched).ToArray();
    }

    private double[] Integrate(int[] chosen, FateGroups groups, int more, int plants)
    {
        var first = chosen.Length > 0 ? Nodes(_causes[chosen[0]].Share, plants) : [(0, 0)];
        var second = chosen.Length > 1 ? Nodes(_causes[chosen[1]].Share, plants) : [(0, 0)];
        var terms = new double[first.Length * second.Length][];
        var phi = new double[2];
        for (var one = 0; one < first.Length; one++)
        {
            for (var other = 0; other < second.Length; other++)
            {
                (phi[0], phi[1]) = (first[one].Node, second[other].Node);
                var logs = groups.Logs(phi, more);
                for (var at = 0; at < logs.Length; at++) logs[at] += first[one].LogWeight + second[other].LogWeight;
                terms[(one * second.Length) + other] = logs;
            }
        }

        var sums = new double[more + 1];
        for (var at = 0; at <= more; at++)
        {
            var most = terms.Max(term => term[at]);
            sums[at] = double.IsNegativeInfinity(most) ? most : most + Math.Log(terms.Sum(term => Math.Exp(term[at] - most)));
        }

        return sums;
    }

    private (double Node, double LogWeight)[] Nodes(SharePrior prior, int plantCount)
    {
        if (prior.IsAll) return [(1, 0)];

        // Exact up to degree 2n - 1; the prior adds its own degree.
        var count = Math.Min(64, ((plantCount + (int)Math.Ceiling(prior.Alpha + prior.Beta)) / 2) + 1);
        if (_nodes.TryGetValue((prior, count), out var known)) return known;
        var logBeta = BetaDistribution.LogBeta(prior.Alpha, prior.Beta);
        return _nodes[(prior, count)] = GaussLegendre.On01(count)
            .Select(node => (node.Node, Math.Log(node.Weight) + ((prior.Alpha - 1) * Math.Log(node.Node)) + ((prior.Beta - 1) * Math.Log(1 - node.Node)) - logBeta))
            .ToArray();
    }
}

/// <summary>Plants that would be grown from one node as a check.</summary>
/// <param name="Count">How many.</param>
/// <param name="Slip">The chance that one is judged wrongly.</param>
/// <param name="ReachOf">How a cause reaches them.</param>
internal sealed record MorePlants(int Count, double Slip, Func<Cause, Reach> ReachOf);
