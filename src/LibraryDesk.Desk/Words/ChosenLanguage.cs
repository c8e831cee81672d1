namespace LibraryDesk.Desk.Words;

/// <summary>The language in which a person is written to.</summary>
internal static class ChosenLanguage
{
    /// <summary>One of <see cref="Languages.All"/>; null for somebody who chose none.</summary>
    public static Task<string?> OfAsync(LibraryDbContext db, Guid person, CancellationToken stop) => db.UserClaims
        .Where(claim => claim.UserId == person && claim.ClaimType == Languages.ClaimType)
        .OrderByDescending(claim => claim.Id).Select(claim => claim.ClaimValue).FirstOrDefaultAsync(stop);
}
