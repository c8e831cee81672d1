using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Provider;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Opens a new look at the plant, for instance when it flowers or fruits.</summary>
public sealed class AddLook(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, CaseFeed feed, LibraryClock clock)
{
    public const int MostLooks = 60;

    // No source: an earlier day is a slip of the finger.
    private const int MostYears = 10;

    /// <param name="date">The day the plant was looked at; null for today.</param>
    public async Task<Outcome<LookRow>> AddAsync(Actor actor, long caseId, DateOnly? date, string? note, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        var last = await LookOf.FindAsync(db, caseId, null, stop);
        var now = clock.Now;

        if (row.Specimen is Specimen.FruitAlone or Specimen.SeedsAlone)
            return new Refusal("case.nothing-grows", "A fruit or seeds alone do not change. Add what else you see to the look that is there.");
        if (last?.Number >= MostLooks) return new Refusal("case.looks", "A case holds 60 looks. Add to the latest one.");
        if (note?.Length > 2000) return new Refusal("case.note", "Keep the note under 2000 characters.");
        // A day of grace: the day may have begun where the plant grows.
        if (date > clock.DayOf(now).AddDays(1)) return new Refusal("case.date", "This day is still to come. Give the day you looked at the plant.");
        if (date < clock.DayOf(now).AddYears(-MostYears)) return new Refusal("case.date", "This day is more than ten years ago. Check the year.");

        var look = new LookRow
        {
            CaseId = caseId,
            Number = (last?.Number ?? 0) + 1,
            Date = date ?? clock.DayOf(now),
            // A plant keeps most of its parts from look to look, so the form starts from those.
            Parts = last?.Parts ?? "",
            Note = string.IsNullOrWhiteSpace(note) ? null : note.Trim(),
            ById = actor.UserId,
            CreatedAt = now,
        };
        db.Add(look);
        db.AddCaseEvent(caseId, CaseEvents.LookAdded, actor, now, look.Number.ToString(CultureInfo.InvariantCulture));
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
        {
            return CaseRefusals.ChangedMeanwhile;
        }
        feed.Publish(caseId);
        return look;
    }
}
