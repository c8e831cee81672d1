using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Finds the look an act is about.</summary>
internal static class LookOf
{
    public static Refusal NoSuchLook { get; } = new("case.look", "This case has no such look. Open the case and choose the look there.");

    /// <summary>The look of that id in that case, or the latest; null when there is none.</summary>
    public static Task<LookRow?> FindAsync(LibraryDbContext db, long caseId, long? lookId, CancellationToken stop) =>
        db.Set<LookRow>()
            .Where(l => l.CaseId == caseId && (lookId == null || l.Id == lookId))
            .OrderByDescending(l => l.Number)
            .FirstOrDefaultAsync(stop);
}
