using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>The pepper guide as shipped, asked with a flat prior among the species that a check is about.</summary>
internal static class PepperGuide
{
    public const string Annuum = "capsicum-annuum";
    public const string Chinense = "capsicum-chinense";
    public const string Baccatum = "capsicum-baccatum";
    public const string Frutescens = "capsicum-frutescens";
    public const string Pubescens = "capsicum-pubescens";

    public static readonly string[] Domesticated = [Annuum, Baccatum, Chinense, Frutescens, Pubescens];

    public static CompiledGuide Compiled { get; } = CompiledGuide.Compile(BuiltInGuides.Open("capsicum")!.Guide!);

    /// <summary>Odds after sure answers written as "trait=state; trait=state".</summary>
    public static IReadOnlyList<RankedCandidate> Rank(string answers, IReadOnlyList<string>? among = null)
    {
        var check = Evidence.Check(Compiled, [.. answers.Split(';', StringSplitOptions.TrimEntries).Select(a => a.Split('=')).Select(a => Answer.Of(a[0], a[1]))]);
        Assert.Empty(check.Faults);
        return Ranker.Rank(Compiled, check.Evidence!, new Prior(IsFlat: true, Among: among ?? Domesticated)).Candidates;
    }

    public static string First(string answers, IReadOnlyList<string>? among = null) => Rank(answers, among)[0].Id;

    /// <summary>Weight of the answers for one species against another in decibans; the prior is flat, so the ratio is the Bayes factor.</summary>
    public static double Decibans(this IReadOnlyList<RankedCandidate> ranked, string a, string b) =>
        10 * Math.Log10(ranked.Single(c => c.Id == a).Probability / ranked.Single(c => c.Id == b).Probability);
}
