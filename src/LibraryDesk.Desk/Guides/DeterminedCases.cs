using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Record;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Desk.Guides;

/// <summary>The determined cases of one guide, as plants that a version is judged by and learns from.</summary>
internal static class DeterminedCases
{
    /// <summary>Enough for a library's lifetime; a bound, so that a re-run ends.</summary>
    public const int Most = 5000;

    /// <summary>Cases that stand determined without "cf." or "aff.", oldest first; three queries.</summary>
    public static async Task<IReadOnlyList<RerunPlant>> ReadAsync(LibraryDbContext db, string guideId, CancellationToken stop)
    {
        var standing = db.Set<DeterminationRow>().Where(d => d.GuideId == guideId && d.SupersededAt == null && d.Qualifier == "");
        var determinations = await standing.OrderBy(d => d.Id).Take(Most)
            .Select(d => new { d.CaseId, d.Round, d.Taxon, d.Qualifier, d.OriginPacketCode }).ToListAsync(stop);
        var opinions = await (
            from opinion in db.Set<OpinionRow>()
            join determination in standing on new { opinion.CaseId, opinion.Round } equals new { determination.CaseId, determination.Round }
            orderby opinion.Id
            select new { opinion.CaseId, opinion.SealedTaxon }).Take(Most * 5).ToListAsync(stop);
        var answers = await (
            from answer in db.Set<AnswerRow>().AsNoTracking()
            join determination in standing on answer.CaseId equals determination.CaseId
            where answer.TakenBackAt == null
            orderby answer.Id
            select answer).Take(Most * 100).ToListAsync(stop);
        var named = opinions.ToLookup(o => o.CaseId, o => o.SealedTaxon);
        var given = answers.ToLookup(a => a.CaseId);
        return [.. determinations.Select(d => new RerunPlant(
            d.CaseId.ToString(System.Globalization.CultureInfo.InvariantCulture),
            d.Taxon,
            CaseEvidence.AnswersOf(given[d.CaseId]),
            ProvenTruth.Holds(d.Taxon, d.Qualifier, d.OriginPacketCode, named[d.CaseId])))];
    }
}
