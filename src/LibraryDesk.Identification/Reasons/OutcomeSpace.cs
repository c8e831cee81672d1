using System.Numerics;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Reasons;

/// <summary>
/// All that could have been answered to the traits of a case, under one candidate: outcomes are gone through or drawn, and the statistic
/// T = P(answers | candidate) / P(answers | broad) is reckoned of each, as a multiple of 1 / P(what was answered | broad). Buffers are kept from case to case.
/// </summary>
internal sealed class OutcomeSpace
{
    private readonly List<TraitOutcomes> _traits = [];
    private int[] _chosen = [];
    private double[][] _rows = [];
    private double[] _weights = [];
    private double[] _product = [];
    private double[] _before = [];
    private int _forms;
    private int _width;

    /// <summary>Number of answered traits.</summary>
    public int Traits { get; private set; }

    /// <summary>Number of outcomes of all traits together; counted no further than a million.</summary>
    public long Outcomes { get; private set; }

    public TraitOutcomes this[int trait] => _traits[trait];

    /// <param name="shares">Prior of the forms of the guide, without origin.</param>
    public void Fill(CompiledGuide guide, Evidence evidence, ReadOnlySpan<double> shares, int candidate)
    {
        Traits = evidence.Traits.Length;
        _forms = guide.FirstForm[candidate + 1] - guide.FirstForm[candidate];
        _width = TraitOutcomes.WidthOf(_forms);
        while (_traits.Count < Traits) _traits.Add(new TraitOutcomes());
        Grow(ref _weights, _width);
        Grow(ref _product, _width);
        Grow(ref _before, _width * (Traits + 1));
        if (_chosen.Length < Traits) (_chosen, _rows) = (new int[Traits], new double[Traits][]);
        _weights.AsSpan().Clear();
        for (var i = 0; i < _forms; i++) _weights[i] = guide.Forms[guide.FirstForm[candidate] + i].Weight;
        Outcomes = 1;
        for (var t = 0; t < Traits; t++)
        {
            _traits[t].Fill(guide, evidence, evidence.Traits[t], candidate, shares);
            _rows[t] = _traits[t].Scaled;
            Outcomes = Math.Min(1_000_000, Outcomes * _traits[t].Count);
        }
    }

    /// <summary>Takes the outcomes of one number of the exact enumeration.</summary>
    public void Choose(int number)
    {
        for (var t = 0; t < Traits; t++)
        {
            _chosen[t] = number % _traits[t].Count;
            number /= _traits[t].Count;
        }
    }

    /// <summary>Makes ready for <see cref="Draw"/>.</summary>
    public void SumUp()
    {
        for (var t = 0; t < Traits; t++) _traits[t].SumUp(_forms);
    }

    /// <summary>Draws a plant of the candidate: a form, then an outcome of each trait.</summary>
    public void Draw(ref SeededDraws random)
    {
        var u = random.Next();
        var form = 0;
        for (; form < _forms - 1; form++)
        {
            if ((u -= _weights[form]) < 0) break;
        }

        for (var t = 0; t < Traits; t++) _chosen[t] = _traits[t].Draw(form, random.Next());
    }

    /// <summary>The statistic of what was answered.</summary>
    public double Seen()
    {
        _chosen.AsSpan(0, Traits).Clear();
        return Statistic();
    }

    /// <summary>The same without each trait in turn.</summary>
    public void SeenWithout(Span<double> statistics)
    {
        _chosen.AsSpan(0, Traits).Clear();
        StatisticsWithout(statistics);
    }

    /// <summary>The statistic of the outcomes chosen.</summary>
    public double Statistic()
    {
        // Vector by vector and then trait by trait: thousands of outcomes go through here, and the product stays in a register.
        Vector<double> all = default;
        for (var v = 0; v < _width; v += Vector<double>.Count)
        {
            var product = new Vector<double>(_weights, v);
            for (var t = 0; t < Traits; t++) product *= new Vector<double>(_rows[t], (_chosen[t] * _width) + v);
            all += product;
        }

        return Vector.Sum(all);
    }

    /// <summary>P(the outcomes chosen | candidate), from their statistic.</summary>
    public double Probability(double statistic)
    {
        for (var t = 0; t < Traits; t++) statistic /= _traits[t].Ratio[_chosen[t]];
        return statistic;
    }

    /// <summary>The statistic without each trait in turn: the product over the traits before it times that over the traits after it.</summary>
    public void StatisticsWithout(Span<double> statistics)
    {
        _weights.AsSpan(0, _width).CopyTo(_before);
        for (var t = 0; t < Traits; t++)
        {
            var after = _before.AsSpan((t + 1) * _width, _width);
            _before.AsSpan(t * _width, _width).CopyTo(after);
            Rows.Multiply(after, _traits[t].Row(_chosen[t]));
        }

        var product = _product.AsSpan(0, _width);
        product.Fill(1);
        for (var t = Traits - 1; t >= 0; t--)
        {
            statistics[t] = Rows.Dot(_before.AsSpan(t * _width, _width), product);
            Rows.Multiply(product, _traits[t].Row(_chosen[t]));
        }
    }

    private static void Grow(ref double[] buffer, int length)
    {
        if (buffer.Length < length) buffer = new double[length];
    }
}
