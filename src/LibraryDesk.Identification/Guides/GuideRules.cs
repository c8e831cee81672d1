using System.Globalization;

namespace LibraryDesk.Identification.Guides;

/// <summary>The rules a guide must keep beyond having the right entries.</summary>
internal static class GuideRules
{
    /// <summary>States per trait are kept as bits of one 64-bit word.</summary>
    public const int MostStates = 64;

    private const double SumTolerance = 1e-6;

    public static void Check(CropGuide guide, GuideLines lines, List<GuideFault> faults)
    {
        Unique(guide.Sources, s => s.Id, lines.Sources, $"source", faults);
        CheckStages(guide, lines, faults);
        Unique(guide.Parts, p => p.Id, lines.Parts, $"part", faults);
        Unique(guide.Traits, t => t.Id, lines.Traits, $"trait", faults);
        Unique(guide.Cautions, c => c.Id, lines.Cautions, $"caution", faults);
        Unique(guide.Candidates, c => c.Id, lines.Candidates, $"candidate", faults);
        if (guide.Traits.Count == 0) faults.Add(new GuideFault(1, null, $"the guide has no traits"));
        if (guide.Candidates.Count < 2) faults.Add(new GuideFault(1, null, $"the guide needs two candidates at least"));
        if (!(guide.Smoothing > 0)) faults.Add(new GuideFault(1, null, $"\"smoothing\" must be above 0"));
        if (guide.Temper is not (> 0 and <= 1)) faults.Add(new GuideFault(1, null, $"\"temper\" must be above 0 and at most 1"));
        if (guide.FormSharing is not (>= 0 and < 1)) faults.Add(new GuideFault(1, null, $"\"formSharing\" must be 0 or more and below 1"));
        if (!IsReliable(guide.Observer)) faults.Add(new GuideFault(1, null, $"\"observer\" values must be above 0 and at most 1"));

        CheckParts(guide, lines, faults);
        CheckCautions(guide, lines, faults);
        for (var i = 0; i < guide.Traits.Count; i++) CheckTrait(guide, guide.Traits[i], lines.Traits[i], lines.States[i], faults);
        CheckCandidates(guide, lines, faults);
        GuideCellRules.Check(guide, lines, faults);
    }

    internal static void Unique<T>(IReadOnlyList<T> items, Func<T, string> id, List<int> lines, FormattableString what, List<GuideFault> faults, string? trait = null)
    {
        var seen = new Dictionary<string, int>();
        for (var i = 0; i < items.Count; i++)
        {
            var key = id(items[i]);
            if (key.Length == 0) continue;
            if (!seen.TryAdd(key, lines[i])) faults.Add(new GuideFault(lines[i], trait, $"{what} \"{key}\" stands already on line {seen[key]}"));
        }
    }

    /// <summary>A season runs once: a stage that comes back would stand both before and after the ones between.</summary>
    private static void CheckStages(CropGuide guide, GuideLines lines, List<GuideFault> faults)
    {
        var seen = new Dictionary<string, int>();
        for (var i = 0; i < guide.Stages.Count; i++)
        {
            var id = guide.Stages[i].Id;
            if (id.Length > 0 && !seen.TryAdd(id, lines.Stages[i])) faults.Add(new GuideFault(lines.Stages[i], null, $"stage \"{id}\" stands already on line {seen[id]}, so the stages would run in a circle; name each once, in the order of the season"));
        }
    }

    private static bool IsReliable(ObserverReliability? o) =>
        o is null or { Sure: > 0 and <= 1, Fairly: > 0 and <= 1, Faint: > 0 and <= 1 };

    private static void CheckParts(CropGuide guide, GuideLines lines, List<GuideFault> faults)
    {
        var order = guide.Stages.Select((s, i) => (s.Id, i)).GroupBy(x => x.Id).ToDictionary(g => g.Key, g => g.First().i);
        var last = -1;
        for (var i = 0; i < guide.Parts.Count; i++)
        {
            var part = guide.Parts[i];
            if (!order.TryGetValue(part.Stage, out var at))
            {
                faults.Add(new GuideFault(lines.Parts[i], null, $"part \"{part.Id}\" comes at stage \"{part.Stage}\", which is not in \"stages\""));
            }
            else if (at < last)
            {
                faults.Add(new GuideFault(lines.Parts[i], null, $"part \"{part.Id}\" stands after parts of later stages; list parts in the order of the season"));
            }
            else
            {
                last = at;
            }
        }
    }

    private static void CheckCautions(CropGuide guide, GuideLines lines, List<GuideFault> faults)
    {
        for (var i = 0; i < guide.Cautions.Count; i++)
        {
            if (guide.Cautions[i].Sources.Count == 0) faults.Add(new GuideFault(lines.Cautions[i], null, $"caution \"{guide.Cautions[i].Id}\" names no source"));
            KnownSources(guide, guide.Cautions[i].Sources, lines.Cautions[i], faults);
        }
    }

    private static void CheckTrait(CropGuide guide, Trait trait, int line, List<int> stateLines, List<GuideFault> faults)
    {
        void Fault(FormattableString reason) => faults.Add(new GuideFault(line, trait.Id, reason));
        if (guide.Parts.All(p => p.Id != trait.Part)) Fault($"needs part \"{trait.Part}\", which is not in \"parts\"");
        if (!(trait.Minutes > 0)) Fault($"\"minutes\" must be above 0");
        if (!IsReliable(trait.Observer)) Fault($"\"observer\" values must be above 0 and at most 1");
        if (trait.Caution is { } caution && guide.Cautions.All(c => c.Id != caution)) Fault($"names caution \"{caution}\", which is not in \"cautions\"");
        if (trait.Source is { } source && guide.FindSource(source) is null) Fault($"names source \"{source}\", which is not in \"sources\"");
        Unique(trait.States, s => s.Id, stateLines, $"state", faults, trait.Id);
        if (trait.Kind == TraitKind.Measured)
        {
            if (trait.States.Count > 0) Fault($"is measured, so it has a unit and no states");
            if (string.IsNullOrWhiteSpace(trait.Unit)) Fault($"is measured and names no unit");
            return;
        }

        if (trait.Unit is not null) Fault($"has a unit but is not measured");
        if (trait.States.Count == 0) Fault($"has no states");
        if (trait.States.Count == 1) Fault($"has one state only, so it can tell nothing");
        if (trait.States.Count > MostStates) Fault($"has {trait.States.Count} states; {MostStates} is the most");
        foreach (var state in trait.Confused.SelectMany(g => g).Where(s => trait.FindState(s) is null))
        {
            Fault($"\"confused\" names state \"{state}\", which the trait does not have");
        }
    }

    private static void CheckCandidates(CropGuide guide, GuideLines lines, List<GuideFault> faults)
    {
        var sum = 0.0;
        for (var i = 0; i < guide.Candidates.Count; i++)
        {
            CheckCandidate(guide, guide.Candidates[i], lines.Candidates[i], lines.Forms[i], faults);
            sum += guide.Candidates[i].Prior;
        }

        if (guide.Candidates.Count > 0 && Math.Abs(sum - 1) > SumTolerance)
        {
            faults.Add(new GuideFault(lines.Candidates[0], null, $"priors of the candidates sum to {Round(sum)}, not to 1"));
        }

        foreach (var extra in guide.Candidates.Select((c, i) => (c, i)).Where(x => x.c.Kind == CandidateKind.SomethingElse).Skip(1))
        {
            faults.Add(new GuideFault(lines.Candidates[extra.i], null, $"there can be only one candidate of kind something-else"));
        }
    }

    private static void CheckCandidate(CropGuide guide, Candidate candidate, int line, List<int> formLines, List<GuideFault> faults)
    {
        void Fault(int at, FormattableString reason) => faults.Add(new GuideFault(at, null, $"candidate \"{candidate.Id}\" {reason}"));
        if (candidate.Id.Contains('/', StringComparison.Ordinal)) Fault(line, $"has a slash in its id; slashes part a candidate from its form");
        if (candidate.Prior is not (> 0 and <= 1)) Fault(line, $"needs a prior above 0 and at most 1");
        foreach (var caution in candidate.Cautions.Where(id => guide.Cautions.All(c => c.Id != id))) Fault(line, $"names caution \"{caution}\", which is not in \"cautions\"");
        KnownSources(guide, candidate.Sources, line, faults);
        if (candidate.Kind == CandidateKind.LookAlike && candidate.Cautions.Count == 0) Fault(line, $"is a look-alike and names no caution");
        if (candidate.Kind == CandidateKind.SomethingElse && candidate.Forms.Count > 0) Fault(line, $"is something-else and can have no forms");
        Unique(candidate.Forms, f => f.Id, formLines, $"form", faults);
        foreach (var both in candidate.Profiles.Where(p => candidate.Forms.Any(f => f.Id == p))) Fault(line, $"has both a profile and a form called \"{both}\"");
        var sum = 0.0;
        for (var i = 0; i < candidate.Forms.Count; i++)
        {
            var form = candidate.Forms[i];
            sum += form.Weight;
            if (form.Weight is not (> 0 and <= 1)) Fault(formLines[i], $"has form \"{form.Id}\" with a weight that is not above 0 and at most 1");
            if (form.From.Contains(candidate.Id + "/" + form.Id)) Fault(formLines[i], $"has form \"{form.Id}\" that takes cells from itself");
            foreach (var from in form.From.Where(from => !IsCellSet(guide, from))) Fault(formLines[i], $"has form \"{form.Id}\" that takes cells from \"{from}\", which does not exist");
        }

        if (candidate.Forms.Count > 0 && Math.Abs(sum - 1) > SumTolerance) Fault(line, $"has forms whose weights sum to {Round(sum)}, not to 1");
    }

    /// <summary>True for a candidate id, a profile or a form: what a cell can be of.</summary>
    internal static bool IsCellSet(CropGuide guide, string of)
    {
        var slash = of.IndexOf('/', StringComparison.Ordinal);
        var candidate = guide.FindCandidate(slash < 0 ? of : of[..slash]);
        if (candidate is null) return false;
        if (slash < 0) return true;
        var name = of[(slash + 1)..];
        return candidate.Profiles.Contains(name) || candidate.Forms.Any(f => f.Id == name);
    }

    private static void KnownSources(CropGuide guide, IReadOnlyList<string> ids, int line, List<GuideFault> faults)
    {
        foreach (var id in ids.Where(id => guide.FindSource(id) is null)) faults.Add(new GuideFault(line, null, $"names source \"{id}\", which is not in \"sources\""));
    }

    private static string Round(double value) => Math.Round(value, 6).ToString(CultureInfo.InvariantCulture);
}
