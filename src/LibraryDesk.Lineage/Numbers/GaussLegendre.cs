namespace LibraryDesk.Lineage.Numbers;

/// <summary>Gauss-Legendre quadrature on 0 to 1: exact for polynomials up to degree 2n - 1 (NIST Handbook 3.5(v)). Nodes by Newton's method.</summary>
public static class GaussLegendre
{
    /// <summary>Nodes and weights; the weights sum to 1.</summary>
    /// <param name="count">How many nodes, 1 or more.</param>
    public static IReadOnlyList<(double Node, double Weight)> On01(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        var nodes = new (double Node, double Weight)[count];
        for (var at = 0; at < count; at++)
        {
            var x = Math.Cos(Math.PI * (at + 0.75) / (count + 0.5));
            var slope = 0.0;
            for (var step = 0; step < 100; step++)
            {
                var (value, before) = (1.0, 0.0);
                for (var k = 0; k < count; k++) (value, before) = ((((2 * k) + 1) * x * value - (k * before)) / (k + 1), value);
                slope = count * ((x * value) - before) / ((x * x) - 1);
                var move = value / slope;
                x -= move;
                if (Math.Abs(move) < 1e-16) break;
            }

            nodes[at] = ((1 - x) / 2, 1 / ((1 - (x * x)) * slope * slope));
        }

        return nodes;
    }
}
