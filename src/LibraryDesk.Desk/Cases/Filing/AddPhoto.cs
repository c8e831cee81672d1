using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Photos;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>What is said of a photo when it is sent.</summary>
/// <param name="Part">Part id it shows, or "whole"; empty when not said.</param>
/// <param name="Caption">What it shows, for people who cannot see it; null when not said.</param>
/// <param name="IsDrawing">True for the demo's drawn stand-ins; no form sets it.</param>
public sealed record SentPhoto(string Part, string? Caption, bool IsDrawing = false);

/// <summary>Cleans a photo, stores its bytes, and only then writes the row: a photo on record is a photo kept.</summary>
public sealed class AddPhoto(
    IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf, PhotoCleaner cleaner, IPhotoStore store, CaseFeed feed, TimeProvider clock)
{
    public const string WholePlant = "whole";
    public const int MostPhotos = 60;
    public const string TooManyCode = "photo.too-many";

    /// <param name="lookId">The look; null for the latest.</param>
    public async Task<Outcome<PhotoRow>> AddAsync(Actor actor, long caseId, long? lookId, SentPhoto sent, Stream upload, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(sent);
        if (!(await LookForAsync(actor, caseId, lookId, sent, stop)).TryGet(out var look, out var no)) return no;

        // Outside any transaction: this takes a second or more.
        var cleaned = await cleaner.CleanAsync(upload, stop);
        if (!cleaned.Taken) return new Refusal(cleaned.Refusal.Code, Sentence.From(cleaned.Refusal.Words));
        await store.SaveAsync(cleaned.Photo, stop);

        return await RecordAsync(actor, caseId, look, sent, cleaned.Photo, stop);
    }

    private async Task<Outcome<LookRow>> LookForAsync(Actor actor, long caseId, long? lookId, SentPhoto sent, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        if (await LookOf.FindAsync(db, caseId, lookId, stop) is not { } look) return LookOf.NoSuchLook;
        if (await db.Set<PhotoRow>().CountAsync(p => p.CaseId == caseId && p.RemovedAt == null, stop) >= MostPhotos)
            return new Refusal(TooManyCode, "A case holds 60 photos. Remove one that shows little, then add this one.");
        if (sent.Caption?.Length > 300) return new Refusal("photo.caption", "Keep the caption under 300 characters.");
        if (!(await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out var gone)) return gone;
        var known = sent.Part is "" or WholePlant || guide.Guide.Parts.Any(p => p.Id == sent.Part);
        return known ? look : new Refusal("photo.part", "This is not a part the guide knows. Choose the slot again.");
    }

    private async Task<Outcome<PhotoRow>> RecordAsync(
        Actor actor, long caseId, LookRow look, SentPhoto sent, CleanedPhoto photo, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        // Checked again: cleaning takes time, and the case may have been finished meanwhile.
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out var row, out var no)) return no;
        var there = await db.Set<PhotoRow>()
            .FirstOrDefaultAsync(p => p.LookId == look.Id && p.StoreKey == photo.ContentHash && p.Part == sent.Part && p.RemovedAt == null, stop);
        // A phone that never heard our answer sends the same photo again.
        if (there is not null) return there;

        var large = photo[PhotoSize.Large];
        var kept = new PhotoRow
        {
            Id = Guid.NewGuid(),
            CaseId = caseId,
            LookId = look.Id,
            Part = sent.Part,
            StoreKey = photo.ContentHash,
            Width = large.Width,
            Height = large.Height,
            Bytes = photo.Renditions.Sum(r => (long)r.Jpeg.Length),
            Caption = string.IsNullOrWhiteSpace(sent.Caption) ? null : sent.Caption.Trim(),
            IsDrawing = sent.IsDrawing,
            ById = actor.UserId,
            At = clock.GetUtcNow(),
        };
        db.Add(kept);
        db.AddCaseEvent(caseId, CaseEvents.PhotoAdded, actor, kept.At, sent.Part);
        await LookRequests.MeetAsync(db, row, sent.Part, trait: null, kept.At, stop);
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return CaseRefusals.ChangedMeanwhile;
        }
        feed.Publish(caseId);
        return kept;
    }
}
