using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Changes what was said of a case when it began: what its owner calls it, and while nothing is answered the crop.</summary>
public sealed class RenameCase(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, CaseFeed feed, TimeProvider clock)
{
    public const string CropCode = "case.crop";

    /// <param name="actor">The owner, or who filed it for them.</param>
    /// <param name="caseId">A case that is not finished.</param>
    /// <param name="title">What it is called from now on.</param>
    /// <param name="crop">The guide's id; null or the present one leaves it.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<CaseRow>> RunAsync(Actor actor, long caseId, string? title, string? crop, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        if (StartCase.TitleFault(title) is { } fault) return fault;
        if (crop is not null && crop != row.GuideId && await MoveAsync(db, row, crop, stop) is { } stays) return stays;

        row.Title = title!.Trim();
        db.AddCaseEvent(caseId, CaseEvents.Renamed, actor, clock.GetUtcNow());
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return CaseRefusals.ChangedMeanwhile;
        }
        feed.Publish(caseId);
        return row;
    }

    /// <summary>True while the crop can still be changed: a draft without answers, since every answer belongs to a crop's questions.</summary>
    public static bool MayChangeCrop(CaseState state, int answers) => state == CaseState.Draft && answers == 0;

    private async Task<Refusal?> MoveAsync(LibraryDbContext db, CaseRow row, string crop, CancellationToken stop)
    {
        var answers = await db.Set<AnswerRow>().CountAsync(a => a.CaseId == row.Id && a.TakenBackAt == null, stop);
        if (!MayChangeCrop(row.State, answers))
            return new Refusal(CropCode, "What was answered belongs to the questions of this crop. Take the answers back first, or withdraw this case and file the plant anew.");
        if (await shelf.CurrentAsync(crop, stop) is not { } guide) return StartCase.NoSuchGuide;
        (row.GuideId, row.GuideVersion) = (guide.Guide.Id, guide.Guide.Version);
        // The parts were another crop's.
        foreach (var look in await db.Set<LookRow>().Where(l => l.CaseId == row.Id).ToListAsync(stop)) look.Parts = StartCase.FirstParts(guide.Guide, row.Specimen);
        return null;
    }
}
