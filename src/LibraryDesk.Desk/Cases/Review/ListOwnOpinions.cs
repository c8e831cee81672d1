using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>An opinion of the reader's on a case that is decided by now.</summary>
/// <param name="Said">What they said at last: finished, or sealed where they did not finish.</param>
/// <param name="CouldNotTell">True where they said that the looks do not tell; <paramref name="Said"/> is no name then.</param>
/// <param name="Became">What was determined; null where the case was closed without.</param>
/// <param name="Agrees">True where both name the same.</param>
public sealed record OwnOpinion(long CaseId, string Title, DateTimeOffset At, string Said, bool CouldNotTell, string? Became, bool Agrees);

/// <summary>Lists what the reader said of cases that are decided by now, the newest first.</summary>
public sealed class ListOwnOpinions(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    /// <summary>Most opinions listed.</summary>
    public const int Most = 30;

    public async Task<Outcome<IReadOnlyList<OwnOpinion>>> ReadAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var me = actor.UserId;
        var rows = await db.Set<OpinionRow>().AsNoTracking().Where(o => o.VolunteerId == me)
            .Join(
                db.Set<CaseRow>().Where(c => c.State == CaseState.Determined || c.State == CaseState.Closed),
                o => new { Id = o.CaseId, o.Round },
                c => new { c.Id, c.Round },
                (o, c) => new { Opinion = o, c.Title, c.GuideId, c.GuideVersion })
            .OrderByDescending(row => row.Opinion.Id).Take(Most).ToListAsync(stop);
        var cases = rows.Select(row => row.Opinion.CaseId).ToArray();
        var standing = (await db.Set<DeterminationRow>().AsNoTracking().Where(d => cases.Contains(d.CaseId) && d.SupersededAt == null).ToListAsync(stop))
            .ToLookup(d => d.CaseId);

        var own = new List<OwnOpinion>(rows.Count);
        foreach (var row in rows)
        {
            (await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out _);
            var said = row.Opinion.FinalTaxon is { } final ? new NamedTaxon(final, row.Opinion.FinalQualifier ?? Qualifiers.None) : new NamedTaxon(row.Opinion.SealedTaxon, row.Opinion.SealedQualifier);
            var became = standing[row.Opinion.CaseId].MaxBy(d => d.Id) is { } determination ? new NamedTaxon(determination.Taxon, determination.Qualifier) : default(NamedTaxon?);
            own.Add(new OwnOpinion(
                row.Opinion.CaseId, row.Title, row.Opinion.FinalAt ?? row.Opinion.SealedAt, NameOf(guide, said), !said.Tells, became is { } named ? NameOf(guide, named) : null, became?.AgreesWith(said) == true));
        }
        return own;
    }

    // Where the guide's version is gone, the ids are all there is.
    private static string NameOf(CompiledGuide? guide, NamedTaxon taxon) => guide is null ? taxon.Taxon : ReviewWords.Name(guide.Guide, taxon);
}
