using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Marks what the desk asked for as seen, and sends the case back to the queue when nothing is left to wait for.</summary>
internal static class LookRequests
{
    /// <summary>Changes tracked rows only; the act that calls it saves.</summary>
    /// <param name="part">Part of a photo just added, or null.</param>
    /// <param name="trait">Trait just answered, or null.</param>
    public static async Task MeetAsync(LibraryDbContext db, CaseRow row, string? part, string? trait, DateTimeOffset now, CancellationToken stop)
    {
        if (row.State != CaseState.WaitingForLook) return;
        var open = await db.Set<LookRequestRow>().Where(r => r.CaseId == row.Id && r.MetAt == null && r.WithdrawnAt == null).ToListAsync(stop);
        foreach (var request in open)
        {
            // A wanted trait is met by its answer alone; a wanted part by a photo of it; a free request by whatever comes.
            var met = request.TraitId is not null ? request.TraitId == trait
                : request.PartId is not null ? request.PartId == part
                : part is not null || trait is not null;
            if (met) request.MetAt = now;
        }
        if (open.Any(r => r.MetAt is null)) return;
        row.State = CaseState.Open;
        row.StateSince = now;
        await CaseOwner.AskedIsOverAsync(db, row, now, stop);
    }
}
