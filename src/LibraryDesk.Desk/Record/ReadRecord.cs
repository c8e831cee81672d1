using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Words.Guides;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Desk.Record;

/// <summary>
/// The desk's record. It judges only cases whose truth does not lean on the odds: those with a known origin, and those where the opinions
/// that were sealed before any odds were seen already named what was determined.
/// </summary>
public sealed class ReadRecord(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    // Enough for a library's lifetime; a bound, so that the page cannot grow without end.
    private const int Most = 5000;

    /// <summary>Open to everybody: it holds counts, no case and no person.</summary>
    public async Task<DeskRecordView> RunAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var filed = await db.Set<CaseRow>().CountAsync(c => c.FiledAt != null, stop);
        var standing = db.Set<DeterminationRow>().Where(d => d.SupersededAt == null);
        var decided = await standing.OrderByDescending(d => d.At).Take(Most)
            .Select(d => new Decided(d.CaseId, d.Round, d.Taxon, d.Qualifier, d.OriginPacketCode, d.GuideId, d.GuideVersion, d.OddsJson)).ToListAsync(stop);
        var opinions = await (
            from opinion in db.Set<OpinionRow>()
            join determination in standing on new { opinion.CaseId, opinion.Round } equals new { determination.CaseId, determination.Round }
            orderby opinion.Id
            select new { opinion.CaseId, opinion.SealedTaxon }).Take(Most * 5).ToListAsync(stop);
        var looks = await (
            from look in db.Set<LookRow>()
            join determination in standing on look.CaseId equals determination.CaseId
            orderby look.Id
            select new { look.CaseId, look.Parts }).Take(Most * 20).ToListAsync(stop);
        var named = opinions.ToLookup(o => o.CaseId, o => o.SealedTaxon);
        var seen = looks.ToLookup(l => l.CaseId, l => l.Parts);

        var judged = decided
            .Where(d => ProvenTruth.Holds(d.Taxon, d.Qualifier, d.OriginPacketCode, named[d.CaseId]))
            .Select(d => (Case: d, Odds: OddsThen.FromJson(d.OddsJson)))
            .Where(d => d.Odds is not null && d.Odds.Candidates.Any(c => c.Id == d.Case.Taxon))
            .Select(d => new Judged(d.Case, d.Odds!))
            .ToList();
        return new DeskRecordView(
            filed,
            decided.Count,
            judged.Count,
            DeskRecord.Of(judged.ConvertAll(j => j.Forecast)),
            // In twentieths, as readers saw them: groups of equal odds are what the three parts are reckoned from.
            MurphyDecomposition.Of(judged.ConvertAll(j => new BinaryForecast(Math.Round(j.First.Probability * 20) / 20, j.StoodFirst))),
            BySpecies(judged),
            await ByStageAsync(judged, seen, stop),
            await ReadWaits.ReadAsync(db, stop),
            [.. judged.Where(j => !j.StoodFirst).Take(10).Select(j => new Miss(j.NameOf(j.First), j.First, j.NameOf(j.Truth)))]);
    }

    private static IReadOnlyList<SpeciesRecord> BySpecies(List<Judged> judged) =>
        [.. judged.GroupBy(j => j.Truth.Id)
            .Select(g => new SpeciesRecord(g.Key, g.First().NameOf(g.First().Truth), g.Count(), g.Count(j => j.StoodFirst), g.Average(j => j.Truth.Probability)))
            .OrderByDescending(s => s.Cases).ThenBy(s => s.Name, StringComparer.Ordinal)];

    private async Task<IReadOnlyList<StageRecord>> ByStageAsync(List<Judged> judged, ILookup<long, string> seen, CancellationToken stop)
    {
        var staged = new List<(int At, string Name, Judged Case)>();
        foreach (var one in judged)
        {
            if (!(await shelf.FindAsync(one.Case.GuideId, one.Case.GuideVersion, stop)).TryGet(out var guide, out _)) continue;
            var parts = seen[one.Case.CaseId].SelectMany(p => p.Split(',', StringSplitOptions.RemoveEmptyEntries)).ToHashSet();
            var stages = guide.Guide.Stages.Select((stage, at) => (stage, at)).Where(s => guide.Guide.Parts.Any(p => p.Stage == s.stage.Id && parts.Contains(p.Id))).ToList();
            if (stages.Count > 0) staged.Add((stages[^1].at, stages[^1].stage.Name, one));
        }
        return [.. staged.GroupBy(s => s.Name).OrderBy(g => g.Min(s => s.At)).ThenBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new StageRecord(g.Key, g.Count(), g.Count(s => s.Case.StoodFirst), g.Average(s => s.Case.Truth.Probability)))];
    }

    private sealed record Judged(Decided Case, OddsThen Odds)
    {
        public OddsThen.Entry First { get; } = Odds.Candidates.MaxBy(c => c.Probability)!;

        public OddsThen.Entry Truth { get; } = Odds.Candidates.First(c => c.Id == Case.Taxon);

        /// <summary>In the reader's language; the record keeps the guide's own.</summary>
        public string NameOf(OddsThen.Entry entry) => GuideBooks.Say(Case.GuideId, entry.Name);

        public bool StoodFirst => First.Id == Case.Taxon;

        public JudgedForecast Forecast => new([.. Odds.Candidates.Select(c => c.Probability)], Odds.Candidates.Select(c => c.Id).ToList().IndexOf(Case.Taxon));
    }

    private sealed record Decided(
        long CaseId, int Round, string Taxon, string Qualifier, string? OriginPacketCode, string GuideId, string GuideVersion, string OddsJson);
}
