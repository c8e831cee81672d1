using System.Globalization;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Web.Features.Filing;
using LibraryDesk.Web.Shared.Odds;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Cases.CasesText;

namespace LibraryDesk.Web.Features.Cases;

/// <summary>A look that could be taken, as shown.</summary>
internal static class NextLookLines
{
    private const int MostLines = 4;
    private const double WorthNaming = 0.03;

    /// <summary>What the likely answers would do, likeliest first.</summary>
    public static IReadOnlyList<ThenLine> Of(NextLook look, CaseRanking ranking) =>
        [.. look.Outlooks
            .Where(o => o.Probability >= WorthNaming)
            .OrderByDescending(o => o.Probability)
            .Take(MostLines)
            .Select(o =>
            {
                var leader = ranking.Describe(o.Leader);
                var seeds = (int)Math.Round(o.LeaderProbability * 20, MidpointRounding.AwayFromZero);
                return new ThenLine(o.State is null ? Measure(o, ranking.Guide.Guide.FindTrait(look.Trait)?.Unit) : Lower(o.Label), leader.Name, Math.Min(seeds, OddsWords.Cap), OddsLines.IsLatin(leader.Kind), seeds > OddsWords.Cap ? OddsWords.For(seeds) : null);
            })];

    /// <summary>The drawing of the likeliest drawn answer; null where none is drawn.</summary>
    public static string? DrawingOf(NextLook look, CropGuide guide)
    {
        var trait = guide.FindTrait(look.Trait);
        return look.Outlooks
            .OrderByDescending(o => o.Probability)
            .Select(o => o.State is null ? null : trait?.FindState(o.State)?.Drawing)
            .FirstOrDefault(drawing => drawing is not null);
    }

    /// <summary>The same as a part of a page; null where none is drawn.</summary>
    public static RenderFragment? Drawn(NextLook look, CropGuide guide) => DrawingOf(look, guide) is { } name ? Drawings.Named(name) : null;

    private static string Measure(AnswerOutlook outlook, string? unit)
    {
        static string Text(double value) => value.ToString(value < 10 ? "0.#" : "0", CultureInfo.CurrentCulture);
        return (outlook.Low, outlook.High) switch
        {
            (null, null) => Say["any"],
            (null, { } high) => Say[$"under {Text(high)} {unit}"],
            ({ } low, null) => Say[$"over {Text(low)} {unit}"],
            ({ } low, { } high) => Say[$"{Text(low)} to {Text(high)} {unit}"],
        };
    }

    private static string Lower(string label) => label.Length > 1 && char.IsLower(label[1]) ? char.ToLowerInvariant(label[0]) + label[1..] : label;
}
