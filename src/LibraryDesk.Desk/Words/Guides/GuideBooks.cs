using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Words.Guides;

/// <summary>
/// The crop guides that come with the desk in other languages: one word book for each, since one English word of two crops can need two.
/// A guide's English text is the key, so a text that a librarian changed is shown as changed, and a guide without a book stays as written.
/// </summary>
public static class GuideBooks
{
    private static readonly Dictionary<string, WordBook> _books = new()
    {
        ["brassica"] = new(typeof(BrassicaText)),
        ["capsicum"] = new(typeof(CapsicumText)),
        ["cucurbita"] = new(typeof(CucurbitaText)),
        ["phaseolus"] = new(typeof(PhaseolusText)),
    };

    /// <summary>The book of a guide; null where it has none.</summary>
    public static WordBook? Of(string guideId) => _books.GetValueOrDefault(guideId);

    /// <summary>A text of a guide in the reader's language; any other text unchanged, such as a question that a volunteer put in their own words.</summary>
    public static string Say(string guideId, string text) => Of(guideId)?[text] ?? text;

    /// <summary>The guide in the reader's language; itself where that is English or the guide has no book.</summary>
    public static CompiledGuide Translate(CompiledGuide written)
    {
        ArgumentNullException.ThrowIfNull(written);
        return Languages.Now != Languages.All[0] && Of(written.Guide.Id) is { } book ? written.Translate(text => book[text]) : written;
    }
}

/// <summary>Gives <c>BrassicaText.es.resx</c> its name.</summary>
internal static class BrassicaText;

/// <summary>Gives <c>CapsicumText.es.resx</c> its name.</summary>
internal static class CapsicumText;

/// <summary>Gives <c>CucurbitaText.es.resx</c> its name.</summary>
internal static class CucurbitaText;

/// <summary>Gives <c>PhaseolusText.es.resx</c> its name.</summary>
internal static class PhaseolusText;
