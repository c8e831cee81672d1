using LibraryDesk.Data.Notices;

namespace LibraryDesk.Desk.Notices;

/// <summary>Reads and changes how a person wants to be told of what.</summary>
public sealed class NoticeChoices(IDbContextFactory<LibraryDbContext> factory)
{
    /// <summary>How a kind is told to somebody who chose nothing.</summary>
    public static NoticeWay DefaultFor(NoticeKind kind) => kind == NoticeKind.Season ? NoticeWay.InApp : NoticeWay.Both;

    /// <summary>The actor's own choice for every kind, defaults filled in.</summary>
    public async Task<Outcome<NoticeChoiceList>> ReadAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        await using var db = await factory.CreateDbContextAsync(stop);
        var chosen = await db.Set<NoticeChoiceRow>().AsNoTracking().Where(c => c.PersonId == me).ToDictionaryAsync(c => c.Kind, c => c.Way, stop);
        return new NoticeChoiceList(Enum.GetValues<NoticeKind>().ToDictionary(kind => kind, kind => chosen.TryGetValue(kind, out var way) ? way : DefaultFor(kind)));
    }

    /// <summary>Sets the actor's own choices; kinds that are not named stay as they are.</summary>
    public async Task<Outcome<NoticeChoiceList>> ChangeAsync(Actor actor, IReadOnlyDictionary<NoticeKind, NoticeWay> wanted, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(wanted);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        if (wanted.Any(choice => !Enum.IsDefined(choice.Key) || !Enum.IsDefined(choice.Value)))
            return new Refusal("notice.way", "Choose one of: in the app, by e-mail, both, or not at all.");
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = await db.Set<NoticeChoiceRow>().Where(c => c.PersonId == me).ToDictionaryAsync(c => c.Kind, stop);

        foreach (var (kind, way) in wanted)
        {
            if (rows.TryGetValue(kind, out var row)) row.Way = way;
            else db.Add(new NoticeChoiceRow { PersonId = me, Kind = kind, Way = way });
        }

        await db.SaveChangesAsync(stop);
        return await ReadAsync(actor, stop);
    }

    internal static async Task<NoticeWay> OfAsync(LibraryDbContext db, Guid person, NoticeKind kind, CancellationToken stop) =>
        await db.Set<NoticeChoiceRow>().Where(c => c.PersonId == person && c.Kind == kind).Select(c => (NoticeWay?)c.Way).SingleOrDefaultAsync(stop) ?? DefaultFor(kind);
}

/// <summary>A person's choice for every kind.</summary>
public sealed record NoticeChoiceList(IReadOnlyDictionary<NoticeKind, NoticeWay> Ways);
