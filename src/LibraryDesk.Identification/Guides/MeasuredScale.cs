namespace LibraryDesk.Identification.Guides;

/// <summary>A measured trait cut into equal bins of its logarithm, so that numbers and states are reckoned alike.</summary>
internal sealed class MeasuredScale
{
    /// <summary>Bins of the true value.</summary>
    public const int Bins = 64;

    /// <summary>Coarser bins in which a possible answer is foreseen.</summary>
    public const int AnswerBins = 16;

    /// <summary>Half-width, in logarithms, of what a single number says: a number is a narrow band.</summary>
    private const double HalfWidth = 0.01;

    /// <summary>Standard deviations beyond which a normal tail is lost in rounding.</summary>
    private const double Far = 9;

    private readonly double _low;
    private readonly double _width;

    public MeasuredScale(double lowLog, double highLog)
    {
        _low = lowLog;
        _width = (highLog - lowLog) / Bins;
    }

    public double LowLog => _low;

    public double HighLog => _low + (_width * Bins);

    /// <summary>Standard deviation of a measurement's logarithm: about 5 % for a sure one (a ruler on a living plant), more for the rest.</summary>
    public static double Error(int sureness) => sureness switch { 0 => 0.05, 1 => 0.12, _ => 0.25 };

    public double EdgeLog(int bin) => _low + (_width * bin);

    public int BinOf(double value) => Math.Clamp((int)Math.Floor((Math.Log(value) - _low) / _width), 0, Bins - 1);

    public void Fill(double meanLog, double sdLog, Span<double> theta, double floor)
    {
        var sum = 0.0;
        for (var b = 0; b < Bins; b++)
        {
            theta[b] = Math.Max(Normal.Between((EdgeLog(b) - meanLog) / sdLog, (EdgeLog(b + 1) - meanLog) / sdLog), floor);
            sum += theta[b];
        }

        for (var b = 0; b < Bins; b++) theta[b] /= sum;
    }

    /// <summary>P(the answer lies between low and high | true bin), for every true bin. A single number has low = high.</summary>
    public void Likelihood(double low, double high, int sureness, double reliability, Span<double> given)
    {
        var a = low > 0 ? Math.Log(low) : double.NegativeInfinity;
        var b = Math.Log(high);
        if (b - a < 2 * HalfWidth) (a, b) = (((a + b) / 2) - HalfWidth, ((a + b) / 2) + HalfWidth);
        BetweenLogs(a, b, sureness, reliability, given);
    }

    public void BetweenLogs(double a, double b, int sureness, double reliability, Span<double> given)
    {
        var sd = Error(sureness);
        var whole = HighLog - _low;
        var keep = Math.Min(reliability, 0.999);
        // A slip of the pen or the wrong part measured lands anywhere; it also keeps far values from being impossible.
        var overlap = Math.Min(b, HighLog) - Math.Max(a, _low);
        var anywhere = (1 - keep) * (overlap > 0 ? overlap / whole : Math.Min(1, (b - a) / whole));
        double At(double x) => Normal.Between((a - x) / sd, (b - x) / sd);
        var leftEdge = double.NaN;
        for (var bin = 0; bin < Bins; bin++)
        {
            // Mean over the bin by Simpson's rule; bins are narrow against the error.
            var left = EdgeLog(bin);
            if (left - b > Far * sd || a - (left + _width) > Far * sd)
            {
                given[bin] = anywhere;
                continue;
            }

            if (double.IsNaN(leftEdge)) leftEdge = At(left);
            var rightEdge = At(EdgeLog(bin + 1));
            var inside = (leftEdge + (4 * At(left + (_width / 2))) + rightEdge) / 6;
            given[bin] = (keep * inside) + anywhere;
            leftEdge = rightEdge;
        }
    }

    /// <summary>P(answer bin | true bin): rows of true bins, summing to 1.</summary>
    public double[] AnswerTable(int sureness, double reliability)
    {
        var table = new double[Bins * AnswerBins];
        var given = new double[Bins];
        for (var y = 0; y < AnswerBins; y++)
        {
            var a = y == 0 ? double.NegativeInfinity : EdgeLog(y * (Bins / AnswerBins));
            var b = y == AnswerBins - 1 ? double.PositiveInfinity : EdgeLog((y + 1) * (Bins / AnswerBins));
            BetweenLogs(a, b, sureness, reliability, given);
            for (var s = 0; s < Bins; s++) table[(s * AnswerBins) + y] = given[s];
        }

        for (var s = 0; s < Bins; s++)
        {
            var row = table.AsSpan(s * AnswerBins, AnswerBins);
            var sum = 0.0;
            foreach (var p in row) sum += p;
            foreach (ref var p in row) p /= sum;
        }

        return table;
    }
}
