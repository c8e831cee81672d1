using LibraryDesk.Data.People;
using LibraryDesk.Data.Seeds;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>What the library calls people whose ids stand in the ledger. For librarians' eyes only.</summary>
internal static class PersonNames
{
    /// <summary>What is shown once somebody's details were erased.</summary>
    public static string Erased => Say["somebody whose details were erased"];

    public static async Task<IReadOnlyDictionary<Guid, string>> OfAsync(LibraryDbContext db, IEnumerable<Guid?> ids, CancellationToken stop)
    {
        var wanted = ids.OfType<Guid>().Distinct().ToArray();
        var names = wanted.ToDictionary(id => id, id => id == Guid.Empty ? Say["the server"] : Erased);
        if (wanted.Length == 0) return names;
        var people = await db.Set<DeskUser>().Where(user => wanted.Contains(user.Id)).Select(user => new { user.Id, user.DisplayName, user.Email }).ToListAsync(stop);
        foreach (var person in people) names[person.Id] = Named(person.DisplayName, person.Email);
        var donors = await db.Set<DonorRow>().Where(donor => wanted.Contains(donor.Id)).Select(donor => new { donor.Id, donor.Name }).ToListAsync(stop);
        foreach (var donor in donors) names[donor.Id] = Named(donor.Name, null);
        return names;
    }

    private static string Named(string name, string? address) => name.Length > 0 ? name : string.IsNullOrEmpty(address) ? Erased : address;
}
