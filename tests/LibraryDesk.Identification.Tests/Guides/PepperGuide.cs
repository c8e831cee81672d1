using System.Globalization;
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

    /// <summary>Sure answers written as "trait=state; trait=state"; numbers are measured.</summary>
    public static Evidence Answers(string answers)
    {
        var check = Evidence.Check(Compiled, [.. answers.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(One)]);
        Assert.Empty(check.Faults);
        return check.Evidence!;
    }

    private static Answer One(string answer)
    {
        var parts = answer.Split('=');
        return double.TryParse(parts[1], CultureInfo.InvariantCulture, out var number) ? Answer.Measured(parts[0], number) : Answer.Of(parts[0], parts[1]);
    }

    /// <summary>Odds after such answers.</summary>
    public static IReadOnlyList<RankedCandidate> Rank(string answers, IReadOnlyList<string>? among = null) =>
        Ranker.Rank(Compiled, Answers(answers), new Prior(IsFlat: true, Among: among ?? Domesticated)).Candidates;

    public static string First(string answers, IReadOnlyList<string>? among = null) => Rank(answers, among)[0].Id;

    /// <summary>Weight of the answers for one species against another in decibans; the prior is flat, so the ratio is the Bayes factor.</summary>
    public static double Decibans(this IReadOnlyList<RankedCandidate> ranked, string a, string b) =>
        10 * Math.Log10(ranked.Single(c => c.Id == a).Probability / ranked.Single(c => c.Id == b).Probability);
}
