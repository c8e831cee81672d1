using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Settings;

/// <summary>The words of the settings.</summary>
internal static class SettingsText
{
    public static WordBook Say { get; } = new(typeof(SettingsText));
}
