using System.Globalization;

namespace LibraryDesk.Desk.Words;

/// <summary>Dates as a reader of each language writes them out.</summary>
public static class Dates
{
    private static bool Spanish => CultureInfo.CurrentUICulture.TwoLetterISOLanguageName == "es";

    /// <summary>Such as 2 April 2026, or 2 de abril de 2026.</summary>
    public static string Day(DateOnly day) => day.ToString(Spanish ? "d 'de' MMMM 'de' yyyy" : "d MMMM yyyy", Culture);

    /// <inheritdoc cref="Day(DateOnly)"/>
    public static string Day(DateTimeOffset at) => Day(DateOnly.FromDateTime(at.DateTime));

    /// <summary>Such as 2 April 2026, 14:05 UTC.</summary>
    public static string Minute(DateTimeOffset at) => string.Create(CultureInfo.InvariantCulture, $"{Day(at.ToUniversalTime())}, {at.UtcDateTime:HH:mm} UTC");

    /// <summary>Such as 14:05 UTC; the pages' script says it in the reader's own time.</summary>
    public static string Clock(DateTimeOffset at) => string.Create(CultureInfo.InvariantCulture, $"{at.UtcDateTime:HH:mm} UTC");

    /// <summary>Such as 2 April.</summary>
    public static string DayOfYear(DateOnly day) => day.ToString(Spanish ? "d 'de' MMMM" : "d MMMM", Culture);

    /// <summary>Such as Apr 2026.</summary>
    public static string Month(DateOnly day) => day.ToString("MMM yyyy", Culture);

    // English dates are written day first whatever the server's own culture is.
    private static CultureInfo Culture => Spanish ? CultureInfo.CurrentUICulture : CultureInfo.InvariantCulture;
}
