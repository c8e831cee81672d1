using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.People;
using LibraryDesk.Photos;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Cases;

public class PhotoTests
{
    private readonly Actor _member = Actor.Member(Guid.NewGuid());

    [Theory, OnBoth]
    public async Task A_photo_on_record_is_in_the_store_in_every_size(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        var photo = (await AddAsync(library, _member, id, "flowers")).Match(p => p, _ => null!);
        foreach (var size in Enum.GetValues<PhotoSize>())
            Assert.True(await library.Act<IPhotoStore>().ExistsAsync(PhotoKey.For(photo.StoreKey, size), default));
    }

    [Theory, OnBoth]
    public async Task The_same_photo_sent_again_is_kept_once(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        await AddAsync(library, _member, id, "flowers");
        await AddAsync(library, _member, id, "flowers");
        await using var db = await library.OpenAsync();
        Assert.Equal(1, await db.Set<PhotoRow>().CountAsync());
    }

    [Theory, OnBoth]
    public async Task What_is_not_a_picture_leaves_no_trace(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        using var text = new MemoryStream("not a picture"u8.ToArray());
        var outcome = await library.Act<AddPhoto>().AddAsync(_member, id, null, new SentPhoto("flowers", null), text, default);
        Assert.Equal(PhotoRefusals.NotAPictureCode, outcome.Refusal?.Code);
        await using var db = await library.OpenAsync();
        Assert.False(await db.Set<PhotoRow>().AnyAsync());
    }

    [Theory, OnBoth]
    public async Task Somebody_elses_photo_is_refused_before_a_byte_is_read(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        using var photo = ACase.Photo();
        var outcome = await library.Act<AddPhoto>().AddAsync(Actor.Member(Guid.NewGuid()), id, null, new SentPhoto("", null), photo, default);
        Assert.Equal((CaseRefusals.NotFoundCode, 0L), (outcome.Refusal?.Code, photo.Position));
    }

    [Theory, OnBoth]
    public async Task A_removed_photo_can_be_put_back(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        var photo = (await AddAsync(library, _member, id, "")).Match(p => p, _ => null!);
        var act = library.Act<RemovePhoto>();
        Assert.NotNull((await act.RemoveAsync(_member, id, photo.Id, default)).Match(p => p.RemovedAt, _ => null));
        Assert.Null((await act.RestoreAsync(_member, id, photo.Id, default)).Match(p => p.RemovedAt, _ => DateTimeOffset.MaxValue));
    }

    [Theory, OnBoth]
    public async Task A_part_the_guide_does_not_know_is_refused(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        Assert.Equal("photo.part", (await AddAsync(library, _member, id, "wings")).Refusal?.Code);
    }

    private static async Task<Lineage.Outcome<PhotoRow>> AddAsync(TestLibrary library, Actor actor, long id, string part)
    {
        using var photo = ACase.Photo();
        return await library.Act<AddPhoto>().AddAsync(actor, id, null, new SentPhoto(part, null), photo, default);
    }
}
