using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using static LibraryDesk.Web.Features.Guides.GuidesText;

namespace LibraryDesk.Web.Features.Guides;

/// <summary>Counts of plants in words, apart from the published figures.</summary>
internal static class GuideCounts
{
    /// <summary>What was counted of a candidate, its forms together; null where nothing was.</summary>
    public static string? Of(CropGuide guide, string candidate, Trait trait)
    {
        var rows = guide.Counts.Where(c => c.Trait == trait.Id && c.Of.Split('/')[0] == candidate && c.Count > 0).ToList();
        var plants = rows.Sum(c => c.Count);
        // Less than half a plant is a trace of sharing one plant among forms, no finding.
        if (plants < 0.5) return null;
        var number = Say.Count((long)Math.Round(plants), $"about {plants:0} plant", $"about {plants:0} plants");
        if (trait.Kind == TraitKind.Measured)
        {
            var middle = Math.Exp(rows.Sum(c => c.Count * c.MeanLog!.Value) / plants);
            return Say[$"{number}, middle {middle:0.#} {Measures.Unit(trait.Unit, middle)}."];
        }

        var states = rows.GroupBy(c => c.State!).Select(g => (trait.FindState(g.Key)?.Name, Share: g.Sum(c => c.Count) / plants))
            .Where(s => s.Share >= 0.02).OrderByDescending(s => s.Share);
        return $"{number}: {string.Join("; ", states.Select(s => $"{s.Name} ({GuideWords.PerCent(s.Share)})"))}.";
    }
}
