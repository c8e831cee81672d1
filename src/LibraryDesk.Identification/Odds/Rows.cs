using System.Numerics;
using System.Runtime.InteropServices;

namespace LibraryDesk.Identification.Odds;

/// <summary>Sums and products over whole rows of a table. Rows are whole numbers of vectors long.</summary>
internal static class Rows
{
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

    /// <summary>target += a * b, entry by entry.</summary>
    public static void AddProduct(Span<double> target, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var t = MemoryMarshal.Cast<double, Vector<double>>(target);
        var x = MemoryMarshal.Cast<double, Vector<double>>(a);
        var y = MemoryMarshal.Cast<double, Vector<double>>(b);
        for (var i = 0; i < t.Length; i++) t[i] += x[i] * y[i];
    }

    /// <summary>Sum of products.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var x = MemoryMarshal.Cast<double, Vector<double>>(a);
        var y = MemoryMarshal.Cast<double, Vector<double>>(b);
        Vector<double> sum0 = default, sum1 = default;
        var i = 0;
        for (; i + 1 < x.Length; i += 2)
        {
            sum0 += x[i] * y[i];
            sum1 += x[i + 1] * y[i + 1];
        }

        if (i < x.Length) sum0 += x[i] * y[i];
        return Vector.Sum(sum0 + sum1);
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
