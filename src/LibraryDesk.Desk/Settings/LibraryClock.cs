using System.Diagnostics.CodeAnalysis;

namespace LibraryDesk.Desk.Settings;

/// <summary>
/// The clock and the calendar on the library's wall. Moments are kept in UTC; the day they fall on is the day where the library is, so that an
/// evening at the counter is not tomorrow.
/// </summary>
public sealed class LibraryClock(TimeProvider clock)
{
    private TimeZoneInfo _zone = clock.LocalTimeZone;

    /// <summary>The moment, UTC.</summary>
    public DateTimeOffset Now => clock.GetUtcNow();

    /// <summary>The day it is at the library.</summary>
    public DateOnly Today => DayOf(Now);

    /// <summary>The time zone days go by.</summary>
    public TimeZoneInfo Zone => Volatile.Read(ref _zone);

    /// <summary>The time zone of the server, for libraries that chose none.</summary>
    public TimeZoneInfo ServersZone => clock.LocalTimeZone;

    /// <summary>The time zones a library can choose, as the tz database names them, such as Europe/Madrid, in the order of the alphabet.</summary>
    public static IReadOnlyList<string> Zones { get; } =
        [.. TimeZoneInfo.GetSystemTimeZones().Select(NameOf).OfType<string>().Distinct().Order(StringComparer.Ordinal)];

    /// <summary>A moment as the library's clock shows it.</summary>
    public DateTimeOffset Here(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, Zone);

    /// <summary>The day of a moment at the library.</summary>
    [SuppressMessage("ApiDesign", "RS0030", Justification = "Here is where a moment is given its day.")]
    public DateOnly DayOf(DateTimeOffset at) => DateOnly.FromDateTime(Here(at).DateTime);

    /// <summary>The first moment of a day at the library, UTC: mostly midnight, but clocks are put forward and back at midnight too.</summary>
    public DateTimeOffset BeginOf(DateOnly day)
    {
        var zone = Zone;
        var midnight = new DateTimeOffset(day, TimeOnly.MinValue, TimeSpan.Zero);
        var near = midnight - zone.GetUtcOffset(midnight);
        // Midnight by the clock of the evening before, and by that of the morning after: the first of the two that falls on the day.
        var evening = midnight - zone.GetUtcOffset(near.AddHours(-3));
        var morning = midnight - zone.GetUtcOffset(near.AddHours(3));
        return new[] { evening, morning }.Where(at => DayOf(at) == day).DefaultIfEmpty(morning).Min();
    }

    /// <summary>True for the name of a time zone that this server knows.</summary>
    public static bool Knows(string name) => TimeZoneInfo.TryFindSystemTimeZoneById(name, out _);

    /// <summary>Goes by a time zone from now on.</summary>
    /// <param name="name">As the tz database names it; empty, or a name this server does not know, for the server's own.</param>
    internal void GoBy(string name) =>
        Volatile.Write(ref _zone, name.Length > 0 && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone) ? zone : clock.LocalTimeZone);

    private static string? NameOf(TimeZoneInfo zone) =>
        zone.HasIanaId ? zone.Id : TimeZoneInfo.TryConvertWindowsIdToIanaId(zone.Id, out var name) ? name : null;
}
