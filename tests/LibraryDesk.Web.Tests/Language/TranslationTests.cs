using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using LibraryDesk.Desk.Words;
using LibraryDesk.TestServers;

namespace LibraryDesk.Web.Tests.Language;

/// <summary>Every sentence that a feature speaks stands in its Spanish file, with the same values, and nothing stands there in vain.</summary>
public partial class TranslationTests
{
    private static readonly string Sources = Path.Combine(Repository.Root, "src");

    // Signs of units, which both languages write alike.
    private static readonly string[] LeftBare = ["g", "kg", "mm", "cm", "m", "km", "cM"];

    /// <summary>The folders that have a word book, as paths under src.</summary>
    public static TheoryData<string> Features()
    {
        var data = new TheoryData<string>();
        foreach (var book in Books()) data.Add(Path.GetRelativePath(Sources, book));
        return data;
    }

    [Theory]
    [MemberData(nameof(Features))]
    public void Every_sentence_has_its_Spanish(string book)
    {
        var spoken = SentencesOf(Path.Combine(Sources, book));
        var known = Spanish(Path.Combine(Sources, book));
        var missing = spoken.Except(known.Keys).Order(StringComparer.Ordinal).ToList();
        Assert.True(missing.Count == 0, "Without Spanish:\n" + string.Join('\n', missing));
        var idle = known.Keys.Except(spoken).Order(StringComparer.Ordinal).ToList();
        Assert.True(idle.Count == 0, "Never spoken:\n" + string.Join('\n', idle));
    }

    [Theory]
    [MemberData(nameof(Features))]
    public void A_translation_keeps_the_values_and_the_links(string book)
    {
        var lines = Spanish(Path.Combine(Sources, book));
        // A resource file takes no two names that differ only in capitals; the second would be lost.
        Assert.Empty(lines.Keys.GroupBy(english => english, StringComparer.OrdinalIgnoreCase).Where(alike => alike.Count() > 1).Select(alike => alike.Key));
        foreach (var (english, spanish) in lines)
        {
            Assert.False(string.IsNullOrWhiteSpace(spanish), english);
            Assert.Equal(Values(english), Values(spanish));
            Assert.Equal(english.Count(c => c == '['), spanish.Count(c => c == '['));
            Assert.Equal(english.Split("**").Length, spanish.Split("**").Length);
        }
    }

    [Fact]
    public void No_words_stand_bare_in_the_markup()
    {
        var bare = Pages().SelectMany(file => BareWords.In(File.ReadAllText(file)).Except(LeftBare).Select(words => $"{Path.GetRelativePath(Sources, file)}: {words}")).ToList();
        Assert.True(bare.Count == 0, "Words that ask no word book:\n" + string.Join('\n', bare));
    }

    [Theory]
    [MemberData(nameof(Features))]
    public void The_book_finds_its_file(string book)
    {
        var (english, spanish) = Spanish(Path.Combine(Sources, book)).First(line => line.Key != line.Value && !line.Key.Contains('{'));
        var type = new[] { typeof(App).Assembly, typeof(WordBook).Assembly }.SelectMany(assembly => assembly.GetTypes())
            .Single(t => t.Name == Path.GetFileNameWithoutExtension(book));
        var words = (WordBook)type.GetProperty("Say", BindingFlags.Static | BindingFlags.Public)!.GetValue(null)!;
        using var _ = Languages.Speak("es");
        Assert.Equal(spanish, words[english]);
        CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("es-MX");
        Assert.Equal(spanish, words[english]);
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        Assert.Equal(english, words[english]);
    }

    // Every page and part; the page that shows the design is for developers.
    private static IEnumerable<string> Pages() => Directory.EnumerateFiles(Sources, "*.razor", SearchOption.AllDirectories)
        .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/Shared/Design/", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    private static IEnumerable<string> Books() => Directory.EnumerateFiles(Sources, "*Text.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
        .Where(file => File.ReadAllText(file).Contains("static WordBook Say", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    private static HashSet<string> SentencesOf(string book) => Path.GetFileName(book) == nameof(RefusalText) + ".cs"
        ? RefusalSentences.All()
        : [.. FilesOf(book).SelectMany(file => SpokenSentences.In(File.ReadAllText(file)))];

    // A folder under another's that has a book of its own speaks from its own; the page that shows the design is for developers.
    private static IEnumerable<string> FilesOf(string book)
    {
        var folder = Path.GetDirectoryName(book)!;
        var others = Books().Select(other => Path.GetDirectoryName(other)! + Path.DirectorySeparatorChar)
            .Where(other => other != folder + Path.DirectorySeparatorChar && other.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal)).ToList();
        return Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(file => file.EndsWith(".razor", StringComparison.Ordinal) || file.EndsWith(".cs", StringComparison.Ordinal))
            .Where(file => !file.Contains("/obj/", StringComparison.Ordinal) && !file.Contains("/Shared/Design/", StringComparison.Ordinal))
            .Where(file => !others.Any(other => file.StartsWith(other, StringComparison.Ordinal)));
    }

    private static Dictionary<string, string> Spanish(string book)
    {
        var file = Path.ChangeExtension(book, ".es.resx");
        if (!File.Exists(file)) return [];
        return XDocument.Load(file, LoadOptions.PreserveWhitespace).Root!.Elements("data")
            .ToDictionary(line => line.Attribute("name")!.Value, line => line.Element("value")!.Value);
    }

    // How a value is written, such as a date, is up to the language.
    private static List<string> Values(string pattern) => [.. Value().Matches(pattern).Select(match => match.Groups["number"].Value).Distinct().Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"\{(?<number>\d+)[^}]*\}")]
    private static partial Regex Value();
}
