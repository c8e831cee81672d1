using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A donor without a sign-in.</summary>
/// <param name="Contact">How to reach them; null when not told.</param>
/// <param name="Accessions">How often they gave seed.</param>
public sealed record DonorLine(Guid Id, string Name, string? Contact, int Accessions);

/// <summary>Donors as read, by name.</summary>
public sealed record DonorLines(IReadOnlyList<DonorLine> Donors);

/// <summary>Lists donors who have no sign-in, for librarians. Those with one stand on the people page.</summary>
public sealed class ListDonors(IDbContextFactory<LibraryDbContext> factory)
{
    private const int Most = 200;

    /// <param name="actor">A librarian.</param>
    /// <param name="name">Part of a name; empty for all.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<DonorLines>> ReadAsync(Actor actor, string? name, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var asked = (name ?? "").Trim();
        var rows = await db.Set<DonorRow>().AsNoTracking().Where(donor => donor.ErasedAt == null && (asked == "" || donor.Name.Contains(asked))).OrderBy(donor => donor.Name).ThenBy(donor => donor.Id).Take(Most)
            .Select(donor => new { donor.Id, donor.Name, donor.Contact, Accessions = db.Set<AccessionRow>().Count(row => row.DonorId == donor.Id && !row.IsVoid) }).ToListAsync(stop);
        return new DonorLines([.. rows.Select(row => new DonorLine(row.Id, row.Name, row.Contact, row.Accessions))]);
    }
}
