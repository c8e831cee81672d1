using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Drawn;

/// <summary>A point on the sheet, in sheet units.</summary>
internal readonly record struct Dot(double X, double Y)
{
    public static Dot operator +(Dot a, Dot b) => new(a.X + b.X, a.Y + b.Y);

    public static Dot operator -(Dot a, Dot b) => new(a.X - b.X, a.Y - b.Y);

    public static Dot operator *(Dot a, double k) => new(a.X * k, a.Y * k);

    /// <summary>This point turned round the origin; angles grow clockwise, as y grows downward.</summary>
    public Dot Turned(double radians) =>
        new((X * Math.Cos(radians)) - (Y * Math.Sin(radians)), (X * Math.Sin(radians)) + (Y * Math.Cos(radians)));
}

/// <summary>The colour at a point of the sheet.</summary>
internal delegate Rgb24 Paint(double x, double y);

/// <summary>
/// A sheet of 960 by 720 units that polygons are filled on. Drawn at twice the size and averaged down, which smooths the edges.
/// </summary>
internal sealed class Sketch
{
    public const int Width = 960;
    public const int Height = 720;
    private const int Fine = 2;

    private readonly Rgb24[] _pixels = new Rgb24[Width * Fine * Height * Fine];

    /// <summary>A fresh sheet; the ground changes from top to bottom only.</summary>
    public Sketch(Func<double, Rgb24> ground)
    {
        for (var row = 0; row < Height * Fine; row++)
        {
            _pixels.AsSpan(row * Width * Fine, Width * Fine).Fill(ground((row + 0.5) / Fine));
        }
    }

    public static Paint Flat(Rgb24 colour) => (_, _) => colour;

    /// <summary>Lighter towards <paramref name="light"/>, darker at <paramref name="reach"/> from it.</summary>
    public static Paint Round(Rgb24 colour, Dot light, double reach) => (x, y) =>
    {
        var far = Math.Min(1.4, Math.Sqrt(((x - light.X) * (x - light.X)) + ((y - light.Y) * (y - light.Y))) / reach);
        return Shade(colour, 1.22 - (0.5 * far));
    };

    public static Rgb24 Shade(Rgb24 c, double k) => new(Clamp(c.R * k), Clamp(c.G * k), Clamp(c.B * k));

    /// <summary>Fills a polygon by the even-odd rule, line by line.</summary>
    public void Fill(IReadOnlyList<Dot> polygon, Paint paint)
    {
        const int w = Width * Fine, h = Height * Fine;
        var top = Math.Max(0, (int)(polygon.Min(p => p.Y) * Fine));
        var bottom = Math.Min(h - 1, (int)Math.Ceiling(polygon.Max(p => p.Y) * Fine));
        var crossings = new List<double>();
        for (var row = top; row <= bottom; row++)
        {
            var y = (row + 0.5) / Fine;
            crossings.Clear();
            for (var i = 0; i < polygon.Count; i++)
            {
                var (a, b) = (polygon[i], polygon[(i + 1) % polygon.Count]);
                if (a.Y <= y != b.Y <= y) crossings.Add(a.X + ((y - a.Y) / (b.Y - a.Y) * (b.X - a.X)));
            }
            crossings.Sort();
            for (var i = 0; i + 1 < crossings.Count; i += 2)
            {
                var from = Math.Max(0, (int)Math.Ceiling((crossings[i] * Fine) - 0.5));
                var to = Math.Min(w - 1, (int)Math.Floor((crossings[i + 1] * Fine) - 0.5));
                for (var column = from; column <= to; column++) _pixels[(row * w) + column] = paint((column + 0.5) / Fine, y);
            }
        }
    }

    public void Ellipse(Dot centre, double rx, double ry, double turn, Paint paint) =>
        Fill(Enumerable.Range(0, 48).Select(i => centre + new Dot(rx * Math.Cos(i * Math.PI / 24), ry * Math.Sin(i * Math.PI / 24)).Turned(turn)).ToList(), paint);

    /// <summary>A line whose width runs from <paramref name="from"/> to <paramref name="to"/>, with round ends.</summary>
    public void Line(IReadOnlyList<Dot> path, double from, double to, Rgb24 colour)
    {
        var paint = Flat(colour);
        for (var i = 0; i + 1 < path.Count; i++)
        {
            var (a, b) = (path[i], path[i + 1]);
            var length = Math.Max(1e-6, Math.Sqrt(((b.X - a.X) * (b.X - a.X)) + ((b.Y - a.Y) * (b.Y - a.Y))));
            var across = new Dot(-(b.Y - a.Y) / length, (b.X - a.X) / length);
            var (wa, wb) = (At(i) / 2, At(i + 1) / 2);
            Fill([a + (across * wa), b + (across * wb), b - (across * wb), a - (across * wa)], paint);
            Ellipse(b, wb, wb, 0, paint);
        }
        double At(int i) => from + ((to - from) * i / Math.Max(1, path.Count - 1));
    }

    /// <summary>A smooth line through the given points (Catmull-Rom), open or closed.</summary>
    public static List<Dot> Curve(IReadOnlyList<Dot> through, bool closed)
    {
        const int steps = 10;
        var n = through.Count;
        var curve = new List<Dot>();
        for (var i = 0; i < (closed ? n : n - 1); i++)
        {
            var (p0, p1, p2, p3) = (Get(i - 1), Get(i), Get(i + 1), Get(i + 2));
            for (var s = 0; s < steps; s++)
            {
                var t = (double)s / steps;
                curve.Add(((p1 * 2) + ((p2 - p0) * t) + (((p0 * 2) - (p1 * 5) + (p2 * 4) - p3) * (t * t)) + (((p1 * 3) - p0 - (p2 * 3) + p3) * (t * t * t))) * 0.5);
            }
        }
        if (!closed) curve.Add(through[^1]);
        return curve;
        Dot Get(int i) => closed ? through[(i + n) % n] : through[Math.Clamp(i, 0, n - 1)];
    }

    /// <summary>The finished picture.</summary>
    public Image<Rgb24> Finish()
    {
        var picture = new Image<Rgb24>(Width, Height);
        picture.ProcessPixelRows(rows =>
        {
            for (var y = 0; y < Height; y++)
            {
                var upper = _pixels.AsSpan(y * Fine * Width * Fine, Width * Fine);
                var lower = _pixels.AsSpan(((y * Fine) + 1) * Width * Fine, Width * Fine);
                var row = rows.GetRowSpan(y);
                for (var x = 0; x < Width; x++)
                {
                    var (a, b, c, d) = (upper[x * Fine], upper[(x * Fine) + 1], lower[x * Fine], lower[(x * Fine) + 1]);
                    row[x] = new Rgb24((byte)((a.R + b.R + c.R + d.R) / 4), (byte)((a.G + b.G + c.G + d.G) / 4), (byte)((a.B + b.B + c.B + d.B) / 4));
                }
            }
        });
        return picture;
    }

    private static byte Clamp(double v) => (byte)Math.Clamp(v, 0, 255);
}
