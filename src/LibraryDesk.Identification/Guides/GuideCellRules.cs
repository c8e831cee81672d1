namespace LibraryDesk.Identification.Guides;

/// <summary>The rules cells and counts must keep.</summary>
internal static class GuideCellRules
{
    public static void Check(CropGuide guide, GuideLines lines, List<GuideFault> faults)
    {
        var traits = guide.Traits.GroupBy(t => t.Id).ToDictionary(g => g.Key, g => g.First());
        var sources = guide.Sources.Select(s => s.Id).ToHashSet();
        var sets = CellSets(guide);
        var seen = new Dictionary<(string, string, string?, double?, double?, string, Word?, double?), int>();
        foreach (var cell in guide.Cells)
        {
            void Fault(FormattableString reason) => faults.Add(new GuideFault(cell.Line, cell.Trait.Length == 0 ? null : cell.Trait, reason));
            CheckOwner(guide, sets, cell.Of, Fault);
            if (cell.Source.Length > 0 && !sources.Contains(cell.Source)) Fault($"names source \"{cell.Source}\", which is not in \"sources\"");
            CheckShare(cell, Fault);
            if (traits.TryGetValue(cell.Trait, out var trait)) CheckPlace(trait, cell, Fault);
            else if (cell.Trait.Length > 0) Fault($"is not a trait of this guide");
            var key = (cell.Of, cell.Trait, cell.State, cell.Low, cell.High, cell.Source, cell.Word, cell.P);
            if (!seen.TryAdd(key, cell.Line)) Fault($"the same cell of the same source stands already on line {seen[key]}");
        }

        CheckSums(guide, traits, faults);
        foreach (var row in guide.Counts) CheckCount(guide, sets, traits, row, faults);
        foreach (var row in guide.Answers) CheckAnswers(traits, row, faults);
        CheckTold(guide, lines, faults);
    }

    private static HashSet<string> CellSets(CropGuide guide)
    {
        var sets = new HashSet<string>();
        foreach (var c in guide.Candidates)
        {
            sets.Add(c.Id);
            sets.UnionWith(c.Profiles.Select(p => c.Id + "/" + p));
            sets.UnionWith(c.Forms.Select(f => c.Id + "/" + f.Id));
        }

        return sets;
    }

    private static void CheckOwner(CropGuide guide, HashSet<string> sets, string of, Action<FormattableString> fault)
    {
        if (of.Length == 0) return;
        if (!sets.Contains(of)) fault($"is a cell of \"{of}\", which is no candidate, profile or form");
        else if (guide.FindCandidate(of)?.Kind == CandidateKind.SomethingElse) fault($"\"something else\" has no cells: it is half the pooled mean, half uniform");
    }

    private static void CheckShare(Cell cell, Action<FormattableString> fault)
    {
        if (cell.Word is null && cell.P is null) fault($"needs a \"word\" or a \"p\"");
        if (cell.Word is not null && cell.P is not null) fault($"has both a \"word\" and a \"p\"; give one");
        if (cell.P is not null and not (>= 0 and <= 1)) fault($"\"p\" must lie between 0 and 1");
        if (cell.N is not null && cell.P is null) fault($"has a number of plants \"n\" but no counted share \"p\"");
    }

    private static void CheckPlace(Trait trait, Cell cell, Action<FormattableString> fault)
    {
        if (trait.Kind != TraitKind.Measured)
        {
            if (cell.Low is not null || cell.High is not null) fault($"has a band, but the trait is not measured");
            if (cell.State is null) fault($"names no state");
            else if (trait.FindState(cell.State) is null) fault($"names state \"{cell.State}\", which the trait does not have");
            return;
        }

        if (cell.State is not null) fault($"names a state, but the trait is measured: give \"low\" and \"high\"");
        if (cell.Low is null && cell.High is null) fault($"needs \"low\", \"high\" or both");
        if (cell.Low < 0 || cell.High <= 0) fault($"a band of a measured trait cannot be negative or end at 0");
        if (cell.Low >= cell.High) fault($"the band {cell.Low} to {cell.High} is empty or upside down");
    }

    private static void CheckSums(CropGuide guide, Dictionary<string, Trait> traits, List<GuideFault> faults)
    {
        foreach (var group in guide.Cells.GroupBy(c => (c.Of, c.Trait)))
        {
            if (!traits.ContainsKey(group.Key.Trait)) continue;
            if (group.All(c => c.Word == Word.Never || c.P == 0))
            {
                faults.Add(new GuideFault(group.First().Line, group.Key.Trait, $"the cells of \"{group.Key.Of}\" sum to nothing: no state can occur"));
            }

            foreach (var counted in group.Where(c => c.P is not null && c.N is not null).GroupBy(c => c.Source))
            {
                if (counted.Sum(c => c.P!.Value) > 1.02) faults.Add(new GuideFault(counted.First().Line, group.Key.Trait, $"counted shares of \"{group.Key.Of}\" from one source sum to more than 1"));
            }

            foreach (var said in group.Where(c => c.State is not null).GroupBy(c => c.Source))
            {
                if (said.Count(c => c.Word == Word.Always) > 1) faults.Add(new GuideFault(said.Last(c => c.Word == Word.Always).Line, group.Key.Trait, $"\"{group.Key.Of}\" cannot always show two states by one source"));
            }
        }
    }

    private static void CheckCount(CropGuide guide, HashSet<string> sets, Dictionary<string, Trait> traits, CountRow row, List<GuideFault> faults)
    {
        void Fault(FormattableString reason) => faults.Add(new GuideFault(row.Line, row.Trait.Length == 0 ? null : row.Trait, reason));
        CheckOwner(guide, sets, row.Of, Fault);
        if (!(row.Count >= 0) || !double.IsFinite(row.Count)) Fault($"\"count\" must be 0 or more");
        if (!traits.TryGetValue(row.Trait, out var trait))
        {
            if (row.Trait.Length > 0) Fault($"is not a trait of this guide");
            return;
        }

        if (trait.Kind == TraitKind.Measured)
        {
            if (row.State is not null) Fault($"names a state, but the trait is measured");
            if (row.MeanLog is null || row.SdLog is not > 0) Fault($"needs \"meanLog\", and \"sdLog\" above 0");
        }
        else if (row.State is null || trait.FindState(row.State) is null)
        {
            Fault($"names state \"{row.State}\", which the trait does not have");
        }
    }

    private static void CheckAnswers(Dictionary<string, Trait> traits, AnswerCount row, List<GuideFault> faults)
    {
        void Fault(FormattableString reason) => faults.Add(new GuideFault(row.Line, row.Trait.Length == 0 ? null : row.Trait, reason));
        if (row.Trait.Length > 0 && !traits.ContainsKey(row.Trait)) Fault($"is not a trait of this guide");
        if (!(row.Count >= 0)) Fault($"\"count\" must be 0 or more");
        if (!(row.Right >= 0 && row.Right <= row.Count)) Fault($"\"right\" must be 0 or more and at most \"count\"");
    }

    /// <summary>A candidate without a single cell could never be told from anything.</summary>
    private static void CheckTold(CropGuide guide, GuideLines lines, List<GuideFault> faults)
    {
        var owners = guide.Cells.Select(c => c.Of).Concat(guide.Counts.Select(c => c.Of)).Select(of => of.Split('/')[0]).ToHashSet();
        for (var i = 0; i < guide.Candidates.Count; i++)
        {
            var candidate = guide.Candidates[i];
            if (candidate.Kind == CandidateKind.SomethingElse || candidate.Id.Length == 0 || owners.Contains(candidate.Id)) continue;
            faults.Add(new GuideFault(lines.Candidates[i], null, $"candidate \"{candidate.Id}\" has no cell at all, so nothing could speak for or against it"));
        }
    }
}
