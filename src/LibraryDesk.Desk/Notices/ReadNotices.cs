using LibraryDesk.Data.Notices;

namespace LibraryDesk.Desk.Notices;

/// <summary>A person's notices.</summary>
/// <param name="Rows">Newest first, at most <see cref="ReadNotices.MostRows"/>.</param>
/// <param name="Unread">How many of all are unread.</param>
public sealed record NoticeList(IReadOnlyList<NoticeRow> Rows, int Unread);

/// <summary>Reads a person's own notices and marks them as read.</summary>
public sealed class ReadNotices(IDbContextFactory<LibraryDbContext> factory, TimeProvider clock)
{
    public const int MostRows = 100;
    public const string GoneCode = "notice.gone";

    public async Task<Outcome<NoticeList>> ReadAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = await db.Set<NoticeRow>().AsNoTracking().Where(n => n.PersonId == me).OrderByDescending(n => n.At).ThenByDescending(n => n.Id).Take(MostRows).ToListAsync(stop);
        return new NoticeList(rows, await UnreadAsync(db, me, stop));
    }

    /// <summary>How many are unread; none for somebody not signed in.</summary>
    public async Task<int> UnreadAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return 0;
        await using var db = await factory.CreateDbContextAsync(stop);
        return await UnreadAsync(db, me, stop);
    }

    /// <summary>Marks one as read and gives it back.</summary>
    public async Task<Outcome<NoticeRow>> OpenAsync(Actor actor, long id, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<NoticeRow>().SingleOrDefaultAsync(n => n.Id == id && n.PersonId == me, stop);
        if (row is null) return new Refusal(GoneCode, "There is no such notice any more. Your notices list the ones that stand.");
        row.ReadAt ??= clock.GetUtcNow();
        await db.SaveChangesAsync(stop);
        return row;
    }

    /// <summary>Marks what leads to a page as read, when its reader comes to that page by another way.</summary>
    /// <param name="actor">Anybody; a visitor has no notices.</param>
    /// <param name="page">The page's address, such as /cases/12; pages below it count too.</param>
    /// <param name="stop">Stops.</param>
    public async Task SeenAsync(Actor actor, string page, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return;
        await using var db = await factory.CreateDbContextAsync(stop);
        var below = page + "/";
        var unread = db.Set<NoticeRow>().Where(n => n.PersonId == me && n.ReadAt == null && (n.Address == page || n.Address.StartsWith(below)));
        if (!await unread.AnyAsync(stop)) return;
        var now = clock.GetUtcNow();
        await unread.ExecuteUpdateAsync(n => n.SetProperty(x => x.ReadAt, now), stop);
    }

    /// <summary>Marks all that were there at <paramref name="seen"/> as read; one that came since stays unread.</summary>
    public async Task<Outcome<NoticeList>> ReadAllAsync(Actor actor, DateTimeOffset seen, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        await using var db = await factory.CreateDbContextAsync(stop);
        var now = clock.GetUtcNow();
        await db.Set<NoticeRow>().Where(n => n.PersonId == me && n.ReadAt == null && n.At <= seen).ExecuteUpdateAsync(n => n.SetProperty(x => x.ReadAt, now), stop);
        return await ReadAsync(actor, stop);
    }

    private static Task<int> UnreadAsync(LibraryDbContext db, Guid me, CancellationToken stop) =>
        db.Set<NoticeRow>().CountAsync(n => n.PersonId == me && n.ReadAt == null, stop);
}
