using LibraryDesk.Desk.Cases;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>The secrets of the guest links opened on this device, kept in one cookie that no script can read.</summary>
internal static class GuestLinks
{
    private const string Cookie = "desk-guest";
    private const int MostKeys = 12;
    private const int KeyLength = 64;

    /// <summary>All secrets of this device, as an actor carries them; null without any.</summary>
    public static string? KeysOf(HttpContext? http) =>
        http?.Request.Cookies[Cookie] is { Length: > 0 and <= (KeyLength + 1) * MostKeys } keys ? keys : null;

    /// <summary>The secret that opens a case with this hash; null when this device does not hold it.</summary>
    public static string? KeyFor(HttpContext? http, string? hash) =>
        hash is null ? null : KeysOf(http)?.Split(CaseAccess.KeySeparator).FirstOrDefault(key => CaseAccess.HashOf(key) == hash);

    public static bool IsKey(string? text) => text is { Length: KeyLength } && text.All(char.IsAsciiHexDigitLower);

    /// <summary>Remembers a secret on this device; the oldest is let go when there are too many.</summary>
    public static void Remember(HttpContext http, string key)
    {
        var keys = (KeysOf(http)?.Split(CaseAccess.KeySeparator) ?? []).Where(k => k != key).TakeLast(MostKeys - 1).Append(key);
        http.Response.Cookies.Append(Cookie, string.Join(CaseAccess.KeySeparator, keys), new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Lax,
            Secure = http.Request.IsHttps,
            IsEssential = true,
            MaxAge = TimeSpan.FromDays(400),
            Path = "/",
        });
    }

    public static string Address(HttpContext http, string publicAddress, string key) =>
        (publicAddress.Length > 0 ? publicAddress.TrimEnd('/') : $"{http.Request.Scheme}://{http.Request.Host}") + "/c/" + key;
}
