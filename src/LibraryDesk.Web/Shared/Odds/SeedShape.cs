using System.Globalization;
using System.Text;

namespace LibraryDesk.Web.Shared.Odds;

/// <summary>The outline of twenty seeds in fives, drawn as two paths so that a row weighs little and scales as one picture.</summary>
public static class SeedShape
{
    /// <summary>How many seeds stand for the whole.</summary>
    public const int Whole = 20;

    /// <summary>One seed on an 18 x 19 grid.</summary>
    public const string Path =
        "M2.6 9.2C2.4 4.6 6 1.2 10.4 1.8C15 2.5 16.9 8.2 14.4 12.8C12.6 16 9 17 6.4 15.6C5.2 17 2.9 16.3 3.3 14.3C3.5 13.3 2.7 11.4 2.6 9.2Z";

    // The same seed in steps from its first point, so that it can be set anywhere in a row.
    private const string Steps =
        "9.2c-.2-4.6 3.4-8 7.800-7.4c4.6 .7 6.5 6.4 4 11c-1.800 3.2-5.4 4.2-8 2.8c-1.2 1.4-3.5 .7-3.100-1.300c.2-1-.6-2.900-.7-5.100z";

    private const int Step = 20;
    private const int Gap = 7;
    private const int Group = 5;
    private const double FirstX = 2.6;

    /// <summary>The box of the whole row.</summary>
    public const string ViewBox = "0 0 419 19";

    private static readonly string[] Rows = [.. Enumerable.Range(0, Whole + 1).Select(n => Seeds(0, n))];
    private static readonly string[] Rest = [.. Enumerable.Range(0, Whole + 1).Select(n => Seeds(n, Whole))];

    /// <summary>The first <paramref name="count"/> seeds; empty for none.</summary>
    public static string Filled(int count) => Rows[count];

    /// <summary>The seeds after the first <paramref name="count"/>; empty when all are filled.</summary>
    public static string Open(int count) => Rest[count];

    private static string Seeds(int from, int to)
    {
        var path = new StringBuilder();
        for (var i = from; i < to; i++)
        {
            path.Append(CultureInfo.InvariantCulture, $"M{FirstX + (i * Step) + (i / Group * Gap):0.#} {Steps}");
        }

        return path.ToString();
    }
}
