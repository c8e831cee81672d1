using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Demo;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Photos;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace LibraryDesk.Desk.Tests.Demo;

public sealed partial class DemoLoaderTests(LoadedDemo demo) : IClassFixture<LoadedDemo>
{
    [Theory, OnBoth]
    public async Task Its_chain_verifies(string database)
    {
        var library = await demo.OnAsync(database);
        var report = await library.Act<VerifyLedger>().RunAsync(Actor.System, null, CancellationToken.None);
        Assert.Null(report.Refusal);
        Assert.Null(report.Match(chain => chain.Fault, _ => null));
    }

    [Theory, OnBoth]
    public async Task Loading_again_changes_nothing(string database)
    {
        var library = await demo.OnAsync(database);
        var before = await CountsAsync(library);
        var again = await DemoLoader.LoadAsync(library.Services, CancellationToken.None);
        Assert.False(again.Match(loaded => loaded.IsNew, _ => true));
        Assert.Equal(before, await CountsAsync(library));
    }

    [Theory, OnBoth]
    public async Task There_is_a_case_in_every_state(string database)
    {
        await using var db = await (await demo.OnAsync(database)).OpenAsync();
        var states = await db.Set<CaseRow>().Select(row => row.State).Distinct().ToListAsync();
        Assert.Equal(Enum.GetValues<CaseState>().Order(), states.Order());
    }

    [Theory, OnBoth]
    public async Task There_is_a_case_of_every_kind(string database)
    {
        await using var db = await (await demo.OnAsync(database)).OpenAsync();
        var specimens = await db.Set<CaseRow>().Select(row => row.Specimen).Distinct().ToListAsync();
        Assert.Equal(Enum.GetValues<Specimen>().Order(), specimens.Order());
        Assert.True(await db.Set<CaseRow>().AnyAsync(row => row.Round > 1 && row.State == CaseState.Open), "none was opened again");
        Assert.True(await db.Set<CaseRow>().AnyAsync(row => row.GuestEmail != null && row.FiledForById == null), "no guest filed one");
        Assert.True(await db.Set<CaseRow>().AnyAsync(row => row.FiledForById != null), "none was filed for a walk-in");
        Assert.True(await db.Set<OpinionRow>().AnyAsync(row => row.FinalTaxon != null && row.FinalTaxon != row.SealedTaxon), "nobody changed a view");
    }

    [Theory, OnBoth]
    public async Task Off_types_from_several_packets_lead_to_a_recall_of_the_swap_table_seed(string database)
    {
        await using var db = await (await demo.OnAsync(database)).OpenAsync();
        var recall = await db.Set<RecallRow>().SingleAsync();
        var recalled = await db.Set<RecallPacketRow>().Where(row => row.HoldId == recall.HoldId).Select(row => row.PacketId).ToListAsync();
        var offTypes = await (from clue in db.Set<OriginClueRow>()
                              join determination in db.Set<DeterminationRow>() on clue.CaseId equals determination.CaseId
                              join packet in db.Set<PacketRow>() on clue.PacketCode equals packet.Code
                              where clue.Tied && determination.Taxon == "capsicum-annuum" && determination.VarietyName == null && determination.SupersededAt == null
                              select packet.Id).Distinct().ToListAsync();
        Assert.True(offTypes.Count >= 3);
        Assert.Empty(offTypes.Except(recalled));
    }

    [Theory, OnBoth]
    public async Task Nothing_in_it_is_later_than_now(string database)
    {
        await using var db = await (await demo.OnAsync(database)).OpenAsync();
        var now = LoadedDemo.Today;
        Assert.False(await db.Set<CaseEventRow>().AnyAsync(row => row.At > now));
        Assert.False(await db.Set<LedgerEntryRow>().AnyAsync(row => row.At > now));
        Assert.False(await db.Users.AnyAsync(user => user.JoinedAt > now));
    }

    [Theory, OnBoth]
    public async Task Every_picture_is_kept_and_marked_as_a_drawing(string database)
    {
        await using var db = await (await demo.OnAsync(database)).OpenAsync();
        var photos = await db.Set<PhotoRow>().ToListAsync();
        Assert.True(photos.Count > 30);
        foreach (var photo in photos)
        {
            Assert.True(photo.IsDrawing && photo.Caption is not null);
            Assert.True(await demo.Photos.ExistsAsync(PhotoKey.For(photo.StoreKey, PhotoSize.Large), CancellationToken.None));
        }
    }

    [Theory, OnBoth]
    public async Task The_pictures_of_a_case_are_in_the_order_they_were_taken_in(string database)
    {
        await using var db = await (await demo.OnAsync(database)).OpenAsync();
        var twins = await db.Set<PhotoRow>().GroupBy(photo => new { photo.CaseId, photo.At }).Where(same => same.Count() > 1).Select(same => same.Key.CaseId).ToListAsync();
        Assert.Empty(twins);
    }

    [Theory, OnBoth]
    public async Task No_letter_of_the_demo_waits_to_be_sent(string database)
    {
        await using var db = await (await demo.OnAsync(database)).OpenAsync();
        Assert.False(await db.Set<OutgoingMailRow>().AnyAsync(letter => letter.SentAt == null));
    }

    [Theory, OnBoth]
    public async Task An_earlier_day_sees_only_what_had_happened_by_then(string database)
    {
        var early = new FakeTimeProvider(new DateTimeOffset(2024, 3, 5, 0, 0, 0, TimeSpan.Zero));
        await using var library = await TestLibrary.CreateAsync(database, services => services.AddSingleton<TimeProvider>(early));
        Assert.Null((await DemoLoader.LoadAsync(library.Services, CancellationToken.None)).Refusal);
        await using var db = await library.OpenAsync();
        Assert.True(await db.Set<PacketRow>().AnyAsync());
        Assert.False(await db.Set<LoanRow>().AnyAsync());
    }

    [Theory, OnBoth]
    public async Task A_library_with_people_in_it_is_left_alone(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using (var scope = library.Services.CreateAsyncScope())
        {
            Assert.Null((await scope.ServiceProvider.GetRequiredService<Accounts>().MakeAsync("a@example.org", "A", "a long enough one", DeskRoles.Librarian)).Refusal);
        }
        var outcome = await DemoLoader.LoadAsync(library.Services, CancellationToken.None);
        Assert.Equal(DemoLoader.NotEmptyCode, outcome.Refusal?.Code);
    }

    private static async Task<IReadOnlyList<int>> CountsAsync(TestLibrary library)
    {
        await using var db = await library.OpenAsync();
        return [await db.Users.CountAsync(), await db.Set<CaseRow>().CountAsync(), await db.Set<CaseEventRow>().CountAsync(), await db.Set<LedgerEntryRow>().CountAsync(), await db.Set<PhotoRow>().CountAsync()];
    }
}
