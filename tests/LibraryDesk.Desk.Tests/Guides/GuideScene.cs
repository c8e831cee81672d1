using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Guides;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Lineage;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Guides;

/// <summary>What librarians do with the pepper guide, in short.</summary>
internal static class GuideScene
{
    public const string Peppers = "capsicum";
    public const string Note = "The second source says it more plainly.";

    public static CropGuide Shipped { get; } = BuiltInGuides.Open(Peppers)!.Guide!;

    /// <summary>A change that moves odds: the spots at the foot of the petals become common in Capsicum annuum.</summary>
    public static GuideEdit Spots() => new PutCell(null, Plain with { State = "green-yellow", Word = Word.Usually, Basis = null });

    /// <summary>A cell of the guide: the flowers of Capsicum annuum have no spots.</summary>
    public static Cell Plain { get; } = Shipped.Cells.First(c => c is { Of: "capsicum-annuum/var-annuum", Trait: "corolla_spots", State: "absent" }) with { Line = 0 };

    public static async Task<long> BeginAsync(TestLibrary library, Actor librarian)
    {
        Assert.Null((await library.Act<BeginDraft>().RunAsync(librarian, Peppers, null, default)).Refusal);
        return (await DraftAsync(library, librarian)).Revision;
    }

    public static async Task<DraftView> DraftAsync(TestLibrary library, Actor librarian) =>
        Value(await library.Act<ReadDraft>().RunAsync(librarian, Peppers, default));

    public static async Task<Outcome<GuideDraftRow>> ChangeAsync(TestLibrary library, Actor librarian, GuideEdit edit) =>
        await library.Act<ChangeDraft>().RunAsync(librarian, Peppers, (await DraftAsync(library, librarian)).Revision, edit, default);

    public static async Task<RerunView> RerunAsync(TestLibrary library, Actor librarian)
    {
        var reruns = library.Act<RerunCases>();
        var started = Value(await reruns.StartAsync(librarian, Peppers, default));
        await reruns.WaitAsync(started.Id, TimeSpan.FromMinutes(2), default);
        return Value(await reruns.ReadAsync(librarian, Peppers, default));
    }

    public static async Task<GuideVersionRow> PublishAsync(TestLibrary library, Actor librarian)
    {
        var rerun = await RerunAsync(library, librarian);
        return Value(await library.Act<PublishGuide>().RunAsync(librarian, Peppers, rerun.Id, Note, default));
    }

    /// <summary>Begins, changes and publishes.</summary>
    public static async Task<GuideVersionRow> PublishedAsync(TestLibrary library, Actor librarian, bool learns = false)
    {
        var revision = await BeginAsync(library, librarian);
        if (learns) Assert.Null((await library.Act<ChangeDraft>().LearnAsync(librarian, Peppers, revision, true, default)).Refusal);
        Assert.Null((await ChangeAsync(library, librarian, Spots())).Refusal);
        return await PublishAsync(library, librarian);
    }

    public static async Task<CaseRow> CaseAsync(TestLibrary library, long id)
    {
        await using var db = await library.OpenAsync();
        return await db.Set<CaseRow>().SingleAsync(c => c.Id == id);
    }

    public static T Value<T>(Outcome<T> outcome) where T : notnull => ReviewScene.Value(outcome);
}
