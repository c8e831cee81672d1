using System.Globalization;

namespace LibraryDesk.Desk.Words;

/// <summary>Dates as a reader of each language writes them out.</summary>
public static class Dates
{
    private static bool Spanish => CultureInfo.CurrentUICulture.TwoLetterISOLanguageName == "es";

    /// <summary>Such as 2 April 2026, or 2 de abril de 2026.</summary>
    public static string Day(DateOnly day) => day.ToString(DayPattern, Culture);

    /// <summary>Such as 2 April 2026, 14:05 UTC+01:00, by the moment's own offset.</summary>
    public static string Minute(DateTimeOffset at) =>
        string.Create(CultureInfo.InvariantCulture, $"{at.ToString(DayPattern, Culture)}, {TimeOfDay(at)} UTC{(at.Offset == TimeSpan.Zero ? "" : at.ToString("zzz", CultureInfo.InvariantCulture))}");

    /// <summary>Such as 14:05, by the moment's own offset.</summary>
    public static string TimeOfDay(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Such as 2 April.</summary>
    public static string DayOfYear(DateOnly day) => day.ToString(Spanish ? "d 'de' MMMM" : "d MMMM", Culture);

    /// <summary>Such as Apr 2026.</summary>
    public static string Month(DateOnly day) => day.ToString("MMM yyyy", Culture);

    private static string DayPattern => Spanish ? "d 'de' MMMM 'de' yyyy" : "d MMMM yyyy";

    // English dates are written day first whatever the server's own culture is.
    private static CultureInfo Culture => Spanish ? CultureInfo.CurrentUICulture : CultureInfo.InvariantCulture;
}
