using System.Globalization;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>The built-in pepper guide, and short hands to ask it.</summary>
internal static class Peppers
{
    private static readonly Lazy<CompiledGuide> Lazily = new(() => CompiledGuide.Compile(BuiltInGuides.Open("capsicum")!.Guide!));

    public static CompiledGuide Guide => Lazily.Value;

    /// <summary>Answers as <c>trait=state; trait=state</c>; numbers are measured.</summary>
    public static Evidence Answers(string text)
    {
        var answers = text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(pair =>
        {
            var parts = pair.Split('=', StringSplitOptions.TrimEntries);
            return double.TryParse(parts[1], CultureInfo.InvariantCulture, out var number) ? Answer.Measured(parts[0], number) : Answer.Of(parts[0], parts[1]);
        });
        var check = Evidence.Check(Guide, [.. answers]);
        Assert.Empty(check.Faults);
        return check.Evidence!;
    }

    public static Ranking Rank(string answers, string? among, bool flat) => Ranker.Rank(Guide, Answers(answers), PriorOf(among, flat));

    public static ReasonTable Reasons(string answers, string a, string b) =>
        ReasonFinder.Between(Guide, Answers(answers), PriorOf(PublishedKeyPaths.Five, true), "capsicum-" + a, "capsicum-" + b)!;

    private static Prior PriorOf(string? among, bool flat) => new(flat, among?.Split(','));
}
