using System.Globalization;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>How a print was asked for in the address. Anything out of range counts as the nearest that is in it.</summary>
/// <param name="Format">Paper and grid.</param>
/// <param name="StartAt">First free place, from 1.</param>
/// <param name="Right">Nudge to the right in millimetres, negative to the left.</param>
/// <param name="Down">Nudge down in millimetres, negative up.</param>
/// <param name="Stakes">Which packets get a stake.</param>
/// <param name="IsTest">True to print one label and the outlines of all others.</param>
/// <param name="SaysUntreated">True where the library states that the seed is not treated.</param>
/// <param name="SaysBelowStandard">True to mark germination under a listed legal minimum.</param>
public sealed record LabelWish(
    LabelFormat Format, int StartAt, double Right, double Down, StakeWish Stakes, bool IsTest, bool SaysUntreated, bool SaysBelowStandard)
{
    /// <summary>The farthest nudge: beyond it another format is meant.</summary>
    public const double MostNudge = 5;

    public static LabelWish Read(string? format, string? start, string? right, string? down, string? stakes, string? test, string? treated, string? below) => new(
        LabelFormat.Of(format),
        int.TryParse(start, NumberStyles.None, CultureInfo.InvariantCulture, out var first) ? first : 1,
        Nudge(right),
        Nudge(down),
        stakes switch { "none" => StakeWish.None, "lot" => StakeWish.EachLot, _ => StakeWish.EachPacket },
        test == "1",
        treated == "no",
        below != "no");

    /// <summary>The address of the style sheet that sets this print's sizes.</summary>
    public string StyleAddress => string.Create(CultureInfo.InvariantCulture, $"/labels/sheet.css?format={Format.Id}&right={Right}&down={Down}");

    private static double Nudge(string? typed) =>
        double.TryParse((typed ?? "").Replace(',', '.'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var millimetres)
            ? Math.Clamp(Math.Round(millimetres, 1), -MostNudge, MostNudge)
            : 0;
}

/// <summary>Which packets get a stake.</summary>
public enum StakeWish
{
    None,
    EachLot,
    EachPacket,
}
