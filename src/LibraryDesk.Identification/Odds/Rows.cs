using System.Numerics;
using System.Runtime.InteropServices;

namespace LibraryDesk.Identification.Odds;

/// <summary>Sums and products over whole rows of a table. Rows are whole numbers of vectors long.</summary>
internal static class Rows
{
    /// <summary>Entries of one vector.</summary>
    public static int VectorLength => Vector<double>.Count;

    /// <summary>A length rounded up to whole vectors.</summary>
    public static int Whole(int length) => (length + VectorLength - 1) / VectorLength * VectorLength;

    /// <summary>target += factor * source.</summary>
    public static void AddScaled(Span<double> target, ReadOnlySpan<double> source, double factor)
    {
        var t = MemoryMarshal.Cast<double, Vector<double>>(target);
        var s = MemoryMarshal.Cast<double, Vector<double>>(source);
        var f = new Vector<double>(factor);
        for (var i = 0; i < t.Length; i++) t[i] += f * s[i];
    }

    /// <summary>target *= source.</summary>
    public static void Multiply(Span<double> target, ReadOnlySpan<double> source)
    {
        var t = MemoryMarshal.Cast<double, Vector<double>>(target);
        var s = MemoryMarshal.Cast<double, Vector<double>>(source);
        for (var i = 0; i < t.Length; i++) t[i] *= s[i];
    }

    /// <summary>target *= factor.</summary>
    public static void Scale(Span<double> target, double factor)
    {
        var t = MemoryMarshal.Cast<double, Vector<double>>(target);
        var f = new Vector<double>(factor);
        for (var i = 0; i < t.Length; i++) t[i] *= f;
    }

    /// <summary>target = a * b, entry by entry.</summary>
    public static void Product(Span<double> target, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var t = MemoryMarshal.Cast<double, Vector<double>>(target);
        var x = MemoryMarshal.Cast<double, Vector<double>>(a);
        var y = MemoryMarshal.Cast<double, Vector<double>>(b);
        for (var i = 0; i < t.Length; i++) t[i] = x[i] * y[i];
    }

    /// <summary>The first of the largest products of two rows entry by entry, none of them negative, and the sum of all.</summary>
    public static (int At, double Largest, double Sum) LargestProduct(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var x = MemoryMarshal.Cast<double, Vector<double>>(a);
        var y = MemoryMarshal.Cast<double, Vector<double>>(b);
        Vector<double> sum = default, largest = new(-1);
        Vector<long> at = default;
        for (var i = 0; i < x.Length; i++)
        {
            var product = x[i] * y[i];
            sum += product;
            at = Vector.ConditionalSelect(Vector.GreaterThan(product, largest), new Vector<long>(i), at);
            largest = Vector.Max(largest, product);
        }

        var (first, most) = (0, -1.0);
        for (var lane = 0; lane < VectorLength; lane++)
        {
            var index = ((int)at[lane] * VectorLength) + lane;
            if (largest[lane] > most || (largest[lane] == most && index < first)) (first, most) = (index, largest[lane]);
        }

        return (first, most, Vector.Sum(sum));
    }

    /// <summary>target += a * b, entry by entry.</summary>
    public static void AddProduct(Span<double> target, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var t = MemoryMarshal.Cast<double, Vector<double>>(target);
        var x = MemoryMarshal.Cast<double, Vector<double>>(a);
        var y = MemoryMarshal.Cast<double, Vector<double>>(b);
        for (var i = 0; i < t.Length; i++) t[i] += x[i] * y[i];
    }

    /// <summary>target = the sum over states of factor * the state's row of the table.</summary>
    public static void SumScaled(Span<double> target, ReadOnlySpan<double> table, ReadOnlySpan<double> factors)
    {
        var stride = target.Length;
        target.Clear();
        var t = MemoryMarshal.Cast<double, Vector<double>>(target);
        var s = 0;
        // Four states in one pass: the target is read and written a quarter as often.
        for (; s + 4 <= factors.Length; s += 4)
        {
            var a = MemoryMarshal.Cast<double, Vector<double>>(table.Slice(s * stride, stride));
            var b = MemoryMarshal.Cast<double, Vector<double>>(table.Slice((s + 1) * stride, stride));
            var c = MemoryMarshal.Cast<double, Vector<double>>(table.Slice((s + 2) * stride, stride));
            var d = MemoryMarshal.Cast<double, Vector<double>>(table.Slice((s + 3) * stride, stride));
            Vector<double> fa = new(factors[s]), fb = new(factors[s + 1]), fc = new(factors[s + 2]), fd = new(factors[s + 3]);
            for (var i = 0; i < t.Length; i++) t[i] += ((fa * a[i]) + (fb * b[i])) + ((fc * c[i]) + (fd * d[i]));
        }

        for (; s < factors.Length; s++)
        {
            if (factors[s] != 0) AddScaled(target, table.Slice(s * stride, stride), factors[s]);
        }
    }

    /// <summary>Adds to each sum the product of a row, or of a part of one, with one row of a table, <paramref name="sums"/> rows in all.</summary>
    /// <param name="table">From where the part begins; a row is <paramref name="stride"/> long.</param>
    public static void AddDots(ReadOnlySpan<double> row, ReadOnlySpan<double> table, int stride, Span<double> sums)
    {
        var length = row.Length;
        var r = MemoryMarshal.Cast<double, Vector<double>>(row);
        var y = 0;
        for (; y + 4 <= sums.Length; y += 4)
        {
            var a = MemoryMarshal.Cast<double, Vector<double>>(table.Slice(y * stride, length));
            var b = MemoryMarshal.Cast<double, Vector<double>>(table.Slice((y + 1) * stride, length));
            var c = MemoryMarshal.Cast<double, Vector<double>>(table.Slice((y + 2) * stride, length));
            var d = MemoryMarshal.Cast<double, Vector<double>>(table.Slice((y + 3) * stride, length));
            Vector<double> sa = default, sb = default, sc = default, sd = default;
            for (var i = 0; i < r.Length; i++)
            {
                var v = r[i];
                sa = Vector.MultiplyAddEstimate(v, a[i], sa);
                sb = Vector.MultiplyAddEstimate(v, b[i], sb);
                sc = Vector.MultiplyAddEstimate(v, c[i], sc);
                sd = Vector.MultiplyAddEstimate(v, d[i], sd);
            }

            sums[y] += Vector.Sum(sa);
            sums[y + 1] += Vector.Sum(sb);
            sums[y + 2] += Vector.Sum(sc);
            sums[y + 3] += Vector.Sum(sd);
        }

        for (; y < sums.Length; y++) sums[y] += Dot(row, table.Slice(y * stride, length));
    }

    /// <summary>Sum of products of whole rows.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var x = MemoryMarshal.Cast<double, Vector<double>>(a);
        var y = MemoryMarshal.Cast<double, Vector<double>>(b);
        Vector<double> sum0 = default, sum1 = default;
        var i = 0;
        for (; i + 1 < x.Length; i += 2)
        {
            sum0 = Vector.MultiplyAddEstimate(x[i], y[i], sum0);
            sum1 = Vector.MultiplyAddEstimate(x[i + 1], y[i + 1], sum1);
        }

        if (i < x.Length) sum0 += x[i] * y[i];
        return Vector.Sum(sum0 + sum1);
    }

    /// <summary>Sum of x ln x over entries that are not negative, 0 counting as 0. Whole vectors long.</summary>
    public static double SumXLogX(ReadOnlySpan<double> a)
    {
        Vector<double> sum = default;
        var least = new Vector<double>(1e-300);
        foreach (var v in MemoryMarshal.Cast<double, Vector<double>>(a)) sum += v * Vector.Log(Vector.Max(v, least));
        return Vector.Sum(sum);
    }

    /// <summary>Sum of a row.</summary>
    public static double Sum(ReadOnlySpan<double> a)
    {
        Vector<double> sum = default;
        foreach (var v in MemoryMarshal.Cast<double, Vector<double>>(a)) sum += v;
        return Vector.Sum(sum);
    }

    /// <summary>Largest entry of a row of entries that are not negative.</summary>
    public static double Max(ReadOnlySpan<double> a)
    {
        Vector<double> most = default;
        foreach (var v in MemoryMarshal.Cast<double, Vector<double>>(a)) most = Vector.Max(most, v);
        var max = 0.0;
        for (var i = 0; i < Vector<double>.Count; i++) max = Math.Max(max, most[i]);
        return max;
    }
}
