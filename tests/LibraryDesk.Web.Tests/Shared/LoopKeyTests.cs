using System.Text.RegularExpressions;
using LibraryDesk.TestServers;

namespace LibraryDesk.Web.Tests.Shared;

/// <summary>Two rows of a loop under one key end the page with an error, so a key is the number of a record, a place in a list or one of a fixed set.</summary>
public partial class LoopKeyTests
{
    // Fixed sets and places in lists, which cannot hold a thing twice.
    private static readonly string[] FixedSets =
    [
        "i", "n", "at", "number", "tick", "size", "weight", "theme", "role", "kind", "name", "language", "view", "sureness", "step", "choice", "reason", "effort", "ending",
        "isolation", "status", "source", "grounds", "choice.Value", "tab.Key", "group.Key", "link.Href", "place.Part",
    ];

    [Fact]
    public void No_key_of_a_loop_is_words_or_figures_that_may_stand_there_twice()
    {
        var pages = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", "LibraryDesk.Web"), "*.razor", SearchOption.AllDirectories);
        var wrong = pages.SelectMany(page => Key().Matches(File.ReadAllText(page)).Select(match => match.Groups[1].Value).Where(key => !IsSafe(key)).Select(key => $"{Path.GetFileName(page)}: {key}"));
        Assert.Empty(wrong);
    }

    private static bool IsSafe(string key) => Identity().IsMatch(key) || FixedSets.Contains(key);

    [GeneratedRegex("@key=\"([^\"]*)\"")]
    private static partial Regex Key();

    [GeneratedRegex(@"^(@\()?([\w.]+\.(Id|Sequence|HoldId|LoanId|CaseId|Number|Sown)( \+ )?)+\)?$")]
    private static partial Regex Identity();
}
