using LibraryDesk.Data.Notices;

namespace LibraryDesk.Desk.Calendar;

/// <summary>Makes and takes back the secret address of a person's calendar feed. There is one at a time; making another ends the former.</summary>
public sealed class CalendarLinks(IDbContextFactory<LibraryDbContext> factory, TimeProvider clock)
{
    /// <summary>When the standing link was made; null without one.</summary>
    public async Task<Outcome<CalendarLinkState>> ReadAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        await using var db = await factory.CreateDbContextAsync(stop);
        return new CalendarLinkState(await db.Set<CalendarLinkRow>().Where(l => l.PersonId == me).Select(l => (DateTimeOffset?)l.MadeAt).SingleOrDefaultAsync(stop));
    }

    /// <summary>Makes a link and returns its secret, which is not kept and cannot be shown again.</summary>
    public async Task<Outcome<string>> MakeAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<CalendarLinkRow>().SingleOrDefaultAsync(l => l.PersonId == me, stop);

        var key = OneTimeCode.ForLink();
        if (row is null) db.Add(row = new CalendarLinkRow { PersonId = me, KeyHash = "" });
        row.KeyHash = OneTimeCode.Hash(key);
        row.MadeAt = clock.GetUtcNow();

        await db.SaveChangesAsync(stop);
        return key;
    }

    /// <summary>Ends the link; calendars that follow it find nothing any more.</summary>
    public async Task<Outcome<CalendarLinkState>> TakeBackAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (actor.UserId is not { } me) return PeopleRefusals.SignInFirst;
        await using var db = await factory.CreateDbContextAsync(stop);
        await db.Set<CalendarLinkRow>().Where(l => l.PersonId == me).ExecuteDeleteAsync(stop);
        return new CalendarLinkState(null);
    }
}

/// <summary>Whether a person has a calendar link.</summary>
/// <param name="MadeAt">When it was made; null without one.</param>
public sealed record CalendarLinkState(DateTimeOffset? MadeAt);
