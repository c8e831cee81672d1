using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Start;

/// <summary>The units a library shows lengths, distances and weights in.</summary>
internal static class ShownUnits
{
    /// <summary>The setting: <c>metric</c>, or <c>both</c> for metric units with inches, feet and ounces beside them.</summary>
    public const string SettingName = "Units";

    public static void UseShownUnits(this IConfiguration configuration) => Measures.ShowsImperial = configuration[SettingName] switch
    {
        null or "" or "metric" => false,
        "both" => true,
        var other => throw new InvalidOperationException($"The setting {SettingName} says {other}. It is metric, or both for inches, feet and ounces beside metric units."),
    };
}
