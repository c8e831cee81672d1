namespace LibraryDesk.Web.Shared.Layout;

/// <summary>The view a reader has chosen for this device: light, dark, bright sun, or what the device says.</summary>
public static class ViewMode
{
    /// <summary>The cookie that keeps the choice. It names a view and nothing else.</summary>
    public const string CookieName = "desk-view";

    /// <summary>The choice that hands the matter back to the device.</summary>
    public const string Auto = "auto";

    /// <summary>The views that can be chosen, as written in the cookie and in the page's <c>data-theme</c>.</summary>
    public static IReadOnlyList<string> Choices { get; } = ["light", "dark", "sun"];

    /// <summary>The view to render with, or null when the device decides. An unknown cookie value counts as no choice.</summary>
    public static string? ThemeOf(HttpContext? http)
    {
        var kept = http?.Request.Cookies[CookieName];
        return kept is not null && Choices.Contains(kept) ? kept : null;
    }
}
