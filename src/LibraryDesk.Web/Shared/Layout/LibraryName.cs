using LibraryDesk.Data.Settings;

namespace LibraryDesk.Web.Shared.Layout;

/// <summary>The name of the library this desk belongs to, as members see it on every page. Cascades to every page.</summary>
/// <param name="Full">The whole name, never empty.</param>
/// <param name="Tagline">A second line, e.g. the place; empty for none.</param>
public sealed record LibraryName(string Full, string Tagline = "")
{
    // A name of three words or more is set on two lines: "Quillbrook" over "Seed Library".
    private const int WordsOnSecondLine = 2;

    /// <summary>Used until a library has set its name.</summary>
    public static LibraryName Unset { get; } = new(new LibrarySettingsRow().Name);

    /// <summary>The first line beside the mark.</summary>
    public string First => Splits ? string.Join(' ', Words[..^WordsOnSecondLine]) : Full;

    /// <summary>The second line beside the mark; null when there is none.</summary>
    public string? Second => Splits ? string.Join(' ', Words[^WordsOnSecondLine..]) : Tagline.Length > 0 ? Tagline : null;

    /// <summary>True when the second line is the library's own addition, which a narrow head leaves out.</summary>
    public bool SecondIsTagline => !Splits && Tagline.Length > 0;

    private string[] Words => Full.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private bool Splits => Tagline.Length == 0 && Words.Length > WordsOnSecondLine;

    /// <summary>The name saved in the settings; until one is saved, <c>Library:Name</c> of the configuration.</summary>
    public static LibraryName From(LibrarySettingsRow settings, IConfiguration configuration)
    {
        if (settings.Name != Unset.Full) return new(settings.Name, settings.Tagline);
        return configuration["Library:Name"] is { } set && !string.IsNullOrWhiteSpace(set)
            ? new(set.Trim(), settings.Tagline)
            : Unset with { Tagline = settings.Tagline };
    }
}
