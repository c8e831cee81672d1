using System.Text.RegularExpressions;
using LibraryDesk.TestServers;

namespace LibraryDesk.Web.Tests.Language;

/// <summary>Finds the English sentences of refusals in the sources: they stand with the rules that refuse, in no book of a folder.</summary>
internal static partial class RefusalSentences
{
    private static readonly string[] Openings = ["Sentence.Of(", "Checks.Text("];

    /// <summary>The patterns of all refusals under src, and of the words that stand inside them as values.</summary>
    public static HashSet<string> All() => [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
        .Concat(Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.razor", SearchOption.AllDirectories))
        .Where(file => !file.Contains("/obj/", StringComparison.Ordinal))
        .SelectMany(file => In(File.ReadAllText(file)))];

    /// <summary>The patterns in one source.</summary>
    /// <remarks>A refusal is made by <c>new Refusal(code, message)</c>, or by <c>new(code, message)</c> with a constant named …Code or a code as text.</remarks>
    public static IEnumerable<string> In(string source) =>
        Made().Matches(source).Select(made => made.Index + made.Length)
            .Concat(Openings.SelectMany(opening => Ends(source, opening)))
            .SelectMany(at => SpokenSentences.Literals(source, at));

    private static IEnumerable<int> Ends(string source, string opening)
    {
        for (var at = source.IndexOf(opening, StringComparison.Ordinal); at >= 0; at = source.IndexOf(opening, at + 1, StringComparison.Ordinal)) yield return at + opening.Length;
    }

    // Up to the comma after the code.
    [GeneratedRegex("""new( Refusal\([^,;]+,|\(\s*([\w.]+Code|"[a-z]+\.[a-z-]+"),)""")]
    private static partial Regex Made();
}
