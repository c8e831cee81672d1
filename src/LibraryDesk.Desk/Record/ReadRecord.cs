using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Desk.Record;

/// <summary>
/// The desk's record. It judges only cases whose truth does not lean on the odds: those with a known origin, and those where the opinions
/// that were sealed before any odds were seen already named what was determined.
/// </summary>
public sealed class ReadRecord(IDbContextFactory<LibraryDbContext> factory)
{
    // Enough for a library's lifetime; a bound, so that the page cannot grow without end.
    private const int Most = 5000;

    /// <summary>Open to everybody: it holds counts, no case and no person.</summary>
    public async Task<DeskRecordView> RunAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var filed = await db.Set<CaseRow>().CountAsync(c => c.FiledAt != null, stop);
        var decided = await (
            from determination in db.Set<DeterminationRow>()
            join found in db.Set<CaseRow>() on determination.CaseId equals found.Id
            where determination.SupersededAt == null
            orderby determination.At descending
            select new Decided(
                determination.CaseId, determination.Round, determination.Taxon, determination.Qualifier, determination.OriginPacketCode,
                determination.OddsJson, determination.At, found.FiledAt)).Take(Most).ToListAsync(stop);
        var ids = decided.ConvertAll(d => d.CaseId);
        var sealedTaxa = await db.Set<OpinionRow>().Where(o => ids.Contains(o.CaseId)).OrderBy(o => o.Id)
            .Select(o => new { o.CaseId, o.Round, o.SealedTaxon }).Take(Most * 5).ToListAsync(stop);
        var sealedByRound = sealedTaxa.ToLookup(o => (o.CaseId, o.Round), o => o.SealedTaxon);

        var judged = decided
            .Where(d => d.Qualifier.Length == 0 && (d.OriginPacketCode is not null || NamedBlind(sealedByRound[(d.CaseId, d.Round)], d.Taxon)))
            .Select(d => (Truth: d.Taxon, Odds: OddsThen.FromJson(d.OddsJson)))
            .Where(d => d.Odds is not null && d.Odds.Candidates.Any(c => c.Id == d.Truth))
            .Select(d => (d.Truth, Odds: d.Odds!))
            .ToList();
        var forecasts = judged.ConvertAll(j => new JudgedForecast(
            [.. j.Odds.Candidates.Select(c => c.Probability)], j.Odds.Candidates.Select(c => c.Id).ToList().IndexOf(j.Truth)));

        return new DeskRecordView(
            filed,
            decided.Count,
            judged.Count,
            DeskRecord.Of(forecasts),
            BySpecies(judged),
            Median(decided.Where(d => d.FiledAt is not null).Select(d => (d.At - d.FiledAt!.Value).TotalDays)),
            [.. judged.Where(j => First(j.Odds).Id != j.Truth).Take(10)
                .Select(j => new Miss(First(j.Odds).Name, First(j.Odds).InWords, NameIn(j.Odds, j.Truth)))]);
    }

    private static bool NamedBlind(IEnumerable<string> sealedTaxa, string taxon)
    {
        var list = sealedTaxa.ToList();
        return list.Count > 0 && 2 * list.Count(t => t == taxon) > list.Count;
    }

    private static IReadOnlyList<SpeciesRecord> BySpecies(List<(string Truth, OddsThen Odds)> judged) =>
        [.. judged.GroupBy(j => j.Truth)
            .Select(g => new SpeciesRecord(g.Key, NameIn(g.First().Odds, g.Key), g.Count(), g.Count(j => First(j.Odds).Id == g.Key)))
            .OrderByDescending(s => s.Cases).ThenBy(s => s.Name, StringComparer.Ordinal)];

    private static OddsThen.Entry First(OddsThen odds) => odds.Candidates.MaxBy(c => c.Probability)!;

    private static string NameIn(OddsThen odds, string id) => odds.Candidates.First(c => c.Id == id).Name;

    private static double? Median(IEnumerable<double> days)
    {
        var sorted = days.Order().ToList();
        if (sorted.Count == 0) return null;
        return sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : (sorted[(sorted.Count / 2) - 1] + sorted[sorted.Count / 2]) / 2;
    }

    private sealed record Decided(
        long CaseId, int Round, string Taxon, string Qualifier, string? OriginPacketCode, string OddsJson, DateTimeOffset At, DateTimeOffset? FiledAt);
}
