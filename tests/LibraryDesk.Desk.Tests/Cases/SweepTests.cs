using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Sweeping;
using LibraryDesk.Desk.People;
using LibraryDesk.Photos;
using LibraryDesk.TestServers;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests.Cases;

public class SweepTests
{
    private static readonly Actor Member = Actor.Member(Guid.NewGuid());

    [Theory, OnBoth]
    public async Task A_photo_taken_off_long_ago_is_cleared_away_and_the_others_stay(string database)
    {
        await using var library = await LibraryAsync(database);
        var id = await ACase.StartAsync(library, Member);
        var kept = await AddAsync(library, id, 100);
        var removed = await AddAsync(library, id, 200);
        await library.Act<RemovePhoto>().RemoveAsync(Member, id, removed.Id, default);

        library.Clock.Advance(TimeSpan.FromDays(SweepPhotos.PutBackDays - 1));
        Assert.Equal(new Swept(0, 0, 0), await SweepAsync(library));
        library.Clock.Advance(TimeSpan.FromDays(2));
        Assert.Equal(new Swept(1, 1, 0), await SweepAsync(library));
        Assert.False(await IsStoredAsync(library, removed.StoreKey));
        Assert.True(await IsStoredAsync(library, kept.StoreKey));
    }

    [Theory, OnBoth]
    public async Task A_photo_another_case_shows_stays(string database)
    {
        await using var library = await LibraryAsync(database);
        var first = await ACase.StartAsync(library, Member);
        var second = await ACase.StartAsync(library, Member);
        var photo = await AddAsync(library, first, 100);
        await AddAsync(library, second, 100);
        await library.Act<RemovePhoto>().RemoveAsync(Member, first, photo.Id, default);
        library.Clock.Advance(TimeSpan.FromDays(SweepPhotos.PutBackDays + 1));
        Assert.Equal(new Swept(1, 0, 0), await SweepAsync(library));
        Assert.True(await IsStoredAsync(library, photo.StoreKey));
    }

    [Theory, OnBoth]
    public async Task What_was_saved_just_now_waits_for_its_row(string database)
    {
        await using var library = await LibraryAsync(database);
        var key = PhotoKey.For(new string('a', 64), PhotoSize.Large);
        await library.Act<IPhotoStore>().SaveAsync(key, new byte[] { 1 }, default);
        library.Clock.Advance(TimeSpan.FromHours(SweepPhotos.GraceHours - 1));
        Assert.Equal(0, (await SweepAsync(library)).Photos);
        library.Clock.Advance(TimeSpan.FromHours(2));
        Assert.Equal(1, (await SweepAsync(library)).Photos);
    }

    [Theory, OnBoth]
    public async Task Another_librarys_photos_are_not_cleared_away(string database)
    {
        await using var library = await LibraryAsync(database);
        foreach (var number in Enumerable.Range(0, 30))
            await library.Act<IPhotoStore>().SaveAsync(PhotoKey.For($"{number:d2}{new string('b', 62)}", PhotoSize.Large), new byte[] { 1 }, default);
        library.Clock.Advance(TimeSpan.FromDays(2));
        Assert.Equal(SweepPhotos.StrangeStoreCode, (await library.Act<SweepPhotos>().RunAsync(Actor.System, default)).Refusal?.Code);
        Assert.Equal(PeopleRefusals.MayNotCode, (await library.Act<SweepPhotos>().RunAsync(Member, default)).Refusal?.Code);
        Assert.True(await IsStoredAsync(library, $"00{new string('b', 62)}"));
    }

    // The store's clock is the library's: both stand still together.
    private static Task<TestLibrary> LibraryAsync(string database) => TestLibrary.CreateAsync(
        database, services => services.AddSingleton<IPhotoStore>(provider => new MemoryPhotoStore(provider.GetRequiredService<TimeProvider>())));

    private static async Task<PhotoRow> AddAsync(TestLibrary library, long caseId, byte shade)
    {
        using var photo = ACase.Photo(shade);
        return (await library.Act<AddPhoto>().AddAsync(Member, caseId, null, new SentPhoto("flowers", null), photo, default)).Match(row => row, no => throw new InvalidOperationException(no.Message));
    }

    private static async Task<Swept> SweepAsync(TestLibrary library) =>
        (await library.Act<SweepPhotos>().RunAsync(Actor.System, default)).Match(swept => swept, no => throw new InvalidOperationException(no.Message));

    private static Task<bool> IsStoredAsync(TestLibrary library, string hash) => library.Act<IPhotoStore>().ExistsAsync(PhotoKey.For(hash, PhotoSize.Large), default);
}
