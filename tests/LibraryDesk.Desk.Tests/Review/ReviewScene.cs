using LibraryDesk.Data.Cases;
using LibraryDesk.Data.People;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Lineage;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Review;

/// <summary>A library with one open pepper case, its owner, three volunteers and a librarian.</summary>
internal sealed class ReviewScene : IAsyncDisposable
{
    public const string Annuum = "capsicum-annuum";
    public const string Baccatum = "capsicum-baccatum";
    public const string Pubescens = "capsicum-pubescens";

    private ReviewScene(TestLibrary library) => Library = library;

    public TestLibrary Library { get; }

    public Actor Owner { get; } = Actor.Member(Guid.NewGuid());

    public Actor Wren { get; } = Actor.Volunteer(Guid.NewGuid());

    public Actor Tam { get; } = Actor.Volunteer(Guid.NewGuid());

    public Actor Ivo { get; } = Actor.Volunteer(Guid.NewGuid());

    public Actor Librarian { get; } = Actor.Librarian(Guid.NewGuid());

    public long CaseId { get; private set; }

    public long LookId { get; private set; }

    public static async Task<ReviewScene> OpenAsync(string database, int opinionsNeeded = 2)
    {
        var scene = new ReviewScene(await TestLibrary.CreateAsync(database));
        await using var db = await scene.Library.OpenAsync();
        db.Add(new LibrarySettingsRow { Name = "Quillbrook", OpinionsNeeded = opinionsNeeded, PublicAddress = "https://desk.example.org" });
        foreach (var actor in new[] { scene.Owner, scene.Wren, scene.Tam, scene.Ivo, scene.Librarian })
        {
            var mail = $"p{actor.UserId:N}@example.org";
            db.Add(new DeskUser { Id = actor.UserId!.Value, UserName = mail, NormalizedUserName = mail.ToUpperInvariant(), Email = mail, SecurityStamp = "s" });
        }
        await db.SaveChangesAsync();
        (scene.CaseId, scene.LookId) = await scene.FileAsync("Pepper in an unmarked pot");
        return scene;
    }

    /// <summary>Files a case with one look: white corolla without spots, and hanging flowers.</summary>
    public async Task<(long CaseId, long LookId)> FileAsync(string title, Action<CaseRow>? also = null, string parts = "leaves,flowers")
    {
        await using var db = await Library.OpenAsync();
        var now = Library.Clock.GetUtcNow();
        var row = new CaseRow
        {
            Title = title,
            GuideId = "capsicum",
            GuideVersion = BuiltInGuides.Open("capsicum")!.Guide!.Version,
            State = CaseState.Open,
            OwnerId = Owner.UserId,
            CreatedAt = now,
            FiledAt = now,
            StateSince = now,
        };
        also?.Invoke(row);
        db.Add(row);
        await db.SaveChangesAsync();
        var look = new LookRow { CaseId = row.Id, Number = 1, Date = new DateOnly(2026, 8, 1), Parts = parts, CreatedAt = now };
        db.Add(look);
        await db.SaveChangesAsync();
        foreach (var (trait, state) in new[] { ("corolla_spots", "absent"), ("corolla_colour", "white") })
            db.Add(new AnswerRow { CaseId = row.Id, LookId = look.Id, TraitId = trait, Kind = AnswerKind.States, States = state, PersonId = Owner.UserId, At = now });
        await db.SaveChangesAsync();
        return (row.Id, look.Id);
    }

    public Task<Outcome<OpinionRow>> SealAsync(Actor actor, string taxon, long? caseId = null) =>
        Library.Act<SealOpinion>().RunAsync(actor, caseId ?? CaseId, new OpinionWritten(new NamedTaxon(taxon), 15, "By the flowers."), default);

    public async Task<Outcome<CaseDecision>> FinishAsync(Actor actor, string taxon, long? caseId = null)
    {
        var mine = (await ReadAsync(actor, caseId)).Mine!;
        return await Library.Act<FinishOpinion>().RunAsync(actor, caseId ?? CaseId, mine.Revision, new NamedTaxon(taxon), null, default);
    }

    public async Task<CaseDecision> GiveAsync(Actor actor, string taxon, long? caseId = null)
    {
        Assert.Null((await SealAsync(actor, taxon, caseId)).Refusal);
        return Value(await FinishAsync(actor, taxon, caseId));
    }

    public async Task<ReviewView> ReadAsync(Actor actor, long? caseId = null) =>
        Value(await Library.Act<ReadReview>().RunAsync(actor, caseId ?? CaseId, default));

    public async Task<CaseRow> CaseAsync()
    {
        await using var db = await Library.OpenAsync();
        return await db.Set<CaseRow>().SingleAsync(c => c.Id == CaseId);
    }

    public async Task<List<TRow>> RowsAsync<TRow>() where TRow : class
    {
        await using var db = await Library.OpenAsync();
        return await db.Set<TRow>().ToListAsync();
    }

    public static T Value<T>(Outcome<T> outcome) where T : notnull =>
        outcome.Match(value => value, refusal => throw new Xunit.Sdk.XunitException($"{refusal.Code}: {refusal.Message}"));

    public ValueTask DisposeAsync() => Library.DisposeAsync();
}
