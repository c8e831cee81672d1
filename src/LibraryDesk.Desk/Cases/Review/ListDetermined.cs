using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>A case that is determined, as lists show it.</summary>
/// <param name="CaseId">The case.</param>
/// <param name="Title">What its owner calls it.</param>
/// <param name="At">When it was determined.</param>
/// <param name="Name">What as, with the qualifier.</param>
/// <param name="Variety">The variety, by its origin; null without one.</param>
/// <param name="PacketCode">The packet that origin is; null without one.</param>
public sealed record DeterminedLine(long CaseId, string Title, DateTimeOffset At, string Name, string? Variety, string? PacketCode);

/// <summary>One page of determined cases.</summary>
/// <param name="Lines">Newest first.</param>
/// <param name="Total">How many there are in all pages.</param>
/// <param name="Page">The page read, from 1.</param>
public sealed record DeterminedPage(IReadOnlyList<DeterminedLine> Lines, int Total, int Page)
{
    public int PageCount => (Total + ListDetermined.OnPage - 1) / ListDetermined.OnPage;
}

/// <summary>Lists what the desk determined, newest first; determinations of cases that were opened again are left out.</summary>
public sealed class ListDetermined(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    public const int OnPage = 25;
    public const int LongestText = 120;

    /// <param name="actor">A volunteer or librarian.</param>
    /// <param name="text">Part of a title, a species, a variety or a packet's code, or the case's number; nothing for all.</param>
    /// <param name="page">From 1; one past the last reads the last.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<DeterminedPage>> ReadAsync(Actor actor, string? text, int page, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var found = db.Set<DeterminationRow>().Where(d => d.SupersededAt == null)
            .Join(db.Set<CaseRow>(), d => d.CaseId, c => c.Id, (d, c) => new { d.Id, d.CaseId, c.Title, d.At, d.Taxon, d.Qualifier, d.VarietyName, d.OriginPacketCode, d.GuideId, d.GuideVersion });
        var asked = (text ?? "").Trim();
        if (asked.Length is > 0 and <= LongestText)
        {
            var lower = asked.ToLowerInvariant();
            var taxon = lower.Replace(' ', '-');
            var number = long.TryParse(asked.TrimStart('#'), NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : 0;
#pragma warning disable CA1304, CA1311, CA1862 // Becomes lower() in SQL, on both databases.
            found = found.Where(d => d.CaseId == number || d.Title.ToLower().Contains(lower) || d.Taxon.Contains(taxon)
                || (d.VarietyName != null && d.VarietyName.ToLower().Contains(lower)) || (d.OriginPacketCode != null && d.OriginPacketCode.ToLower().Contains(lower)));
#pragma warning restore CA1304, CA1311, CA1862
        }

        var total = await found.CountAsync(stop);
        var at = Math.Clamp(page, 1, Math.Max(1, (total + OnPage - 1) / OnPage));
        // Numbers rise with time, and are the table's own order.
        var rows = await found.OrderByDescending(d => d.Id).Skip((at - 1) * OnPage).Take(OnPage).ToListAsync(stop);

        var lines = new List<DeterminedLine>(rows.Count);
        foreach (var row in rows)
        {
            // Where the guide's version is gone, the id is all there is.
            (await shelf.FindAsync(row.GuideId, row.GuideVersion, stop)).TryGet(out var guide, out _);
            var name = guide is null ? row.Taxon : ReviewWords.Name(guide.Guide, new NamedTaxon(row.Taxon, row.Qualifier));
            lines.Add(new DeterminedLine(row.CaseId, row.Title, row.At, name, row.VarietyName, row.OriginPacketCode));
        }
        return new DeterminedPage(lines, total, at);
    }
}
