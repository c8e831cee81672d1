using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Record;

/// <summary>How long people waited at this desk. Times only: no case and no person.</summary>
internal static class ReadWaits
{
    private const int Most = 5000;

    public static async Task<IReadOnlyList<Wait>> ReadAsync(LibraryDbContext db, CancellationToken stop)
    {
        var opinions = db.Set<OpinionRow>();
        var determinations = db.Set<DeterminationRow>();
        var firsts = await db.Set<CaseRow>().Where(c => c.FiledAt != null).OrderByDescending(c => c.Id).Take(Most)
            .Select(c => new
            {
                c.FiledAt,
                Sealed = opinions.Where(o => o.CaseId == c.Id).OrderBy(o => o.SealedAt).Select(o => (DateTimeOffset?)o.SealedAt).FirstOrDefault(),
                // The first determination counts: a case that was opened again had been answered.
                Determined = determinations.Where(d => d.CaseId == c.Id).OrderBy(d => d.At).Select(d => (DateTimeOffset?)d.At).FirstOrDefault(),
            }).ToListAsync(stop);
        var looks = await db.Set<LookRequestRow>().Where(r => r.MetAt != null).OrderByDescending(r => r.Id).Take(Most)
            .Select(r => new { r.At, r.MetAt }).ToListAsync(stop);
        return [.. new[]
        {
            Of(WaitStep.FirstOpinion, firsts.Where(c => c.Sealed is not null).Select(c => c.Sealed!.Value - c.FiledAt!.Value)),
            Of(WaitStep.Determination, firsts.Where(c => c.Determined is not null).Select(c => c.Determined!.Value - c.FiledAt!.Value)),
            Of(WaitStep.Look, looks.Select(r => r.MetAt!.Value - r.At)),
        }.OfType<Wait>()];
    }

    private static Wait? Of(WaitStep step, IEnumerable<TimeSpan> waits)
    {
        var days = waits.Select(w => Math.Max(0, w.TotalDays)).Order().ToList();
        if (days.Count == 0) return null;
        var median = (days[(days.Count - 1) / 2] + days[days.Count / 2]) / 2;
        return new Wait(step, days.Count, median, days[(int)Math.Ceiling(0.9 * days.Count) - 1]);
    }
}
