using System.Globalization;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Editing;

/// <summary>One thing that differs between two versions of a guide.</summary>
/// <param name="Part">What kind of thing.</param>
/// <param name="Of">Whom it belongs to: a source, stage, part, trait, caution or candidate by id; of a cell the candidate, profile or form.</param>
/// <param name="What">Which entry of it, such as <c>question</c> or a state; null for the thing as a whole.</param>
/// <param name="Was">What stood there; null where it is new.</param>
/// <param name="Is">What stands there; null where it is gone.</param>
/// <param name="Trait">Of a cell: its trait.</param>
public sealed record GuideChange(GuidePart Part, string Of, string? What, string? Was, string? Is, string? Trait = null);

/// <summary>Plants counted for one candidate.</summary>
public sealed record CountedPlants(string Candidate, double Was, double Is);

/// <summary>What differs between two versions of a guide, thing by thing and entry by entry.</summary>
/// <param name="Changes">In the order the guide as a whole, sources, stages, parts, cautions, traits, candidates, cells, counts of answers.</param>
/// <param name="Counted">Largest number of plants counted for one trait of a candidate, where it changed.</param>
public sealed record GuideDifference(IReadOnlyList<GuideChange> Changes, IReadOnlyList<CountedPlants> Counted)
{
    /// <summary>True where nothing differs but the version.</summary>
    public bool IsNone => Changes.Count == 0 && Counted.Count == 0;

    /// <summary>Compares two versions.</summary>
    public static GuideDifference Between(CropGuide was, CropGuide becomes)
    {
        ArgumentNullException.ThrowIfNull(was);
        ArgumentNullException.ThrowIfNull(becomes);
        var changes = new List<GuideChange>();
        Things(GuidePart.Whole, [was], [becomes with { Id = was.Id }], g => g.Id, g => g.Crop, Entries, changes);
        Things(GuidePart.Source, was.Sources, becomes.Sources, s => s.Id, s => s.Citation, Entries, changes);
        Things(GuidePart.Stage, was.Stages, becomes.Stages, s => s.Id, s => s.Name, Entries, changes);
        Things(GuidePart.PlantPart, was.Parts, becomes.Parts, p => p.Id, p => p.Name, Entries, changes);
        Things(GuidePart.Caution, was.Cautions, becomes.Cautions, c => c.Id, c => c.Title, Entries, changes);
        Things(GuidePart.Trait, was.Traits, becomes.Traits, t => t.Id, t => t.Name, Entries, changes);
        Things(GuidePart.Candidate, was.Candidates, becomes.Candidates, c => c.Id, c => c.Name, Entries, changes);
        Cells(was, becomes, changes);
        Answers(was, becomes, changes);
        return new GuideDifference(changes, Counts(was, becomes));
    }

    private static void Things<T>(
        GuidePart part, IReadOnlyList<T> was, IReadOnlyList<T> becomes, Func<T, string> id, Func<T, string> name, Func<T, IEnumerable<(string, string?)>> entries, List<GuideChange> changes)
    {
        var old = was.GroupBy(id).ToDictionary(g => g.Key, g => g.First());
        var renewed = becomes.GroupBy(id).ToDictionary(g => g.Key, g => g.First());
        changes.AddRange(old.Where(o => !renewed.ContainsKey(o.Key)).Select(o => new GuideChange(part, o.Key, null, name(o.Value), null)));
        foreach (var (key, thing) in renewed)
        {
            if (!old.TryGetValue(key, out var before))
            {
                changes.Add(new GuideChange(part, key, null, null, name(thing)));
                continue;
            }

            var now = entries(thing).GroupBy(e => e.Item1).ToDictionary(e => e.Key, e => e.First().Item2);
            var then = entries(before).GroupBy(e => e.Item1).ToDictionary(e => e.Key, e => e.First().Item2);
            foreach (var entry in then.Keys.Union(now.Keys))
            {
                var (a, b) = (then.GetValueOrDefault(entry), now.GetValueOrDefault(entry));
                if (a != b) changes.Add(new GuideChange(part, key, entry, a, b));
            }
        }
    }

    private static IEnumerable<(string, string?)> Entries(CropGuide g) =>
    [
        ("crop", g.Crop), ("genus", g.Genus), ("smoothing", Number(g.Smoothing)), ("temper", Number(g.Temper)), ("form sharing", Number(g.FormSharing)),
        ("reliability of answers", Text(g.Observer)), ("order of stages", Joined([.. g.Stages.Select(s => s.Name)])), ("order of parts", Joined([.. g.Parts.Select(p => p.Name)])),
    ];

    private static IEnumerable<(string, string?)> Entries(Source s) => [("citation", s.Citation), ("licence", Text(s.Licence))];

    private static IEnumerable<(string, string?)> Entries(Stage s) => [("name", s.Name)];

    private static IEnumerable<(string, string?)> Entries(Part p) => [("name", p.Name), ("stage", p.Stage)];

    private static IEnumerable<(string, string?)> Entries(Caution c) => [("title", c.Title), ("text", c.Text), ("sources", Joined(c.Sources))];

    private static IEnumerable<(string, string?)> Entries(Trait t) =>
    [
        ("name", t.Name), ("question", Text(t.Question)), ("hint", t.Hint), ("why", t.Why), ("part", t.Part), ("effort", t.Effort.ToString().ToLowerInvariant()),
        ("minutes", Number(t.Minutes)), ("kind", t.Kind.ToString().ToLowerInvariant()), ("unit", t.Unit), ("varies within a plant", YesNo(t.VariesWithinPlant)),
        ("asked", YesNo(t.Asked)), ("caution", t.Caution), ("descriptor", t.Descriptor), ("source", t.Source), ("reliability of answers", Text(t.Observer)),
        ("easily confused", t.Confused.Count == 0 ? null : string.Join("; ", t.Confused.Select(group => string.Join(" / ", group)))),
        .. t.States.Select(s => ("state " + s.Id, (string?)string.Join(", ", new[] { s.Name, s.Hint, s.Drawing }.OfType<string>()))),
    ];

    private static IEnumerable<(string, string?)> Entries(Candidate c) =>
    [
        ("name", c.Name), ("common name", c.Common), ("kind", c.Kind.ToString()), ("grown", YesNo(c.Domesticated)), ("share", Number(c.Prior)),
        ("share rests on", c.PriorBasis), ("cautions", Joined(c.Cautions)), ("card", c.Card), ("sources", Joined(c.Sources)), ("profiles", Joined(c.Profiles)),
        .. c.Forms.Select(f => ("form " + f.Id, (string?)string.Join(", ", new[] { f.Name, Number(f.Weight), f.WeightBasis, Joined(f.From) }.OfType<string>()))),
    ];

    private static void Cells(CropGuide was, CropGuide becomes, List<GuideChange> changes)
    {
        var old = was.Cells.ToLookup(Place);
        var renewed = becomes.Cells.ToLookup(Place);
        foreach (var place in old.Select(g => g.Key).Union(renewed.Select(g => g.Key)))
        {
            // Cells that stand in both are no change; what is left is paired in order.
            var gone = old[place].Select(Says).ToList();
            var came = new List<string>();
            foreach (var says in renewed[place].Select(Says))
            {
                if (!gone.Remove(says)) came.Add(says);
            }

            for (var i = 0; i < Math.Max(gone.Count, came.Count); i++)
            {
                changes.Add(new GuideChange(GuidePart.Cell, place.Of, place.What, gone.ElementAtOrDefault(i), came.ElementAtOrDefault(i), place.Trait));
            }
        }
    }

    private static (string Of, string Trait, string What) Place(Cell c) => (c.Of, c.Trait, c.State ?? $"{Number(c.Low)} to {Number(c.High)}");

    private static string Says(Cell c)
    {
        var share = c.Word?.ToString().ToLowerInvariant() ?? (c.N is { } n ? $"{Number(c.P)} of {n}" : Number(c.P));
        return c.Basis is null ? $"{share} [{c.Source}]" : $"{share} [{c.Source}] {c.Basis}";
    }

    private static void Answers(CropGuide was, CropGuide becomes, List<GuideChange> changes)
    {
        var (old, renewed) = (was.Answers.ToLookup(c => (c.Trait, c.Sure), Says), becomes.Answers.ToLookup(c => (c.Trait, c.Sure), Says));
        foreach (var (trait, sure) in old.Select(g => g.Key).Union(renewed.Select(g => g.Key)))
        {
            var (a, b) = (Joined([.. old[(trait, sure)]]), Joined([.. renewed[(trait, sure)]]));
            if (a != b) changes.Add(new GuideChange(GuidePart.Trait, trait, $"answers given as {sure.ToString().ToLowerInvariant()}", a, b));
        }
    }

    private static string Says(AnswerCount c) => $"{Number(Math.Round(c.Right, 1))} right of {Number(c.Count)} [{c.From}]";

    private static IReadOnlyList<CountedPlants> Counts(CropGuide was, CropGuide becomes)
    {
        var (old, renewed) = (Plants(was), Plants(becomes));
        return [.. old.Keys.Union(renewed.Keys)
            .Select(c => new CountedPlants(c, old.GetValueOrDefault(c), renewed.GetValueOrDefault(c)))
            .Where(c => Math.Abs(c.Was - c.Is) > 0.005)];
    }

    private static Dictionary<string, double> Plants(CropGuide guide) => guide.Counts
        .GroupBy(c => c.Of.Split('/')[0])
        .ToDictionary(g => g.Key, g => g.GroupBy(c => c.Trait).Max(t => t.Sum(c => c.Count)));

    private static string? Text(string text) => text.Length == 0 ? null : text;

    private static string? Text(ObserverReliability? o) => o is null ? null : $"{Number(o.Sure)}, {Number(o.Fairly)}, {Number(o.Faint)}";

    private static string? Joined(IReadOnlyList<string> ids) => ids.Count == 0 ? null : string.Join(", ", ids);

    private static string YesNo(bool value) => value ? "yes" : "no";

    private static string Number(double? value) => value is { } number ? Math.Round(number, 6).ToString(CultureInfo.InvariantCulture) : "open";
}
