using System.Globalization;

namespace LibraryDesk.Desk.Words;

/// <summary>The languages the desk speaks.</summary>
public static class Languages
{
    /// <summary>The type of the claim that keeps a person's language, so that letters are written in it.</summary>
    public const string ClaimType = "language";

    /// <summary>ISO 639-1 codes, the desk's own language first.</summary>
    public static IReadOnlyList<string> All { get; } = ["en", "es"];

    /// <summary>The language spoken now, such as that of the request; one of <see cref="All"/>.</summary>
    public static string Now => All.FirstOrDefault(language => language == CultureInfo.CurrentUICulture.TwoLetterISOLanguageName) ?? All[0];

    /// <summary>A language's name for itself, such as español.</summary>
    public static string NameOf(string language) => CultureInfo.GetCultureInfo(language).NativeName;

    /// <summary>Speaks a language until disposed; for letters, which are read by somebody other than who causes them.</summary>
    /// <param name="language">One of <see cref="All"/>; anything else means the library's own, see <see cref="SetLibrarys"/>.</param>
    public static IDisposable Speak(string? language)
    {
        var before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture =
            CultureInfo.GetCultureInfo(language is not null && All.Contains(language) ? language : Librarys);
        return new Spoken(before.CurrentCulture, before.CurrentUICulture);
    }

    /// <summary>Sets what is spoken to people of whom no choice is known; English until then. Called once, when the server starts.</summary>
    public static void SetLibrarys(string language) => CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.GetCultureInfo(language);

    private static string Librarys =>
        All.FirstOrDefault(language => language == CultureInfo.DefaultThreadCurrentUICulture?.TwoLetterISOLanguageName) ?? All[0];

    private sealed class Spoken(CultureInfo culture, CultureInfo words) : IDisposable
    {
        public void Dispose() => (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, words);
    }
}
