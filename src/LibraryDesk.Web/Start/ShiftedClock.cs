using System.Globalization;

namespace LibraryDesk.Web.Start;

/// <summary>A clock that begins at a given moment and goes on from there, so that the demo can be shown as it is on a day.</summary>
/// <param name="begin">What it shows when it is made.</param>
internal sealed class ShiftedClock(DateTimeOffset begin) : TimeProvider
{
    /// <summary>The setting, honoured in the demo alone: a moment such as <c>2026-11-20T09:00:00Z</c>.</summary>
    public const string SettingName = "DemoNow";

    private readonly TimeSpan _shift = begin - System.GetUtcNow();

    public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + _shift;

    /// <summary>The clock the setting asks for; null where it is not set.</summary>
    public static ShiftedClock? Of(IConfiguration settings) => settings[SettingName] is not { Length: > 0 } text ? null
        : DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var begin) ? new ShiftedClock(begin)
        : throw new InvalidOperationException($"The setting {SettingName} says {text}. It is a moment such as 2026-11-20T09:00:00Z.");
}
