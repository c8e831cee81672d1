using System.Security.Cryptography;
using System.Text;
using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases;

/// <summary>
/// Who may see or change a case. Its owner (signed in, or a guest holding the link's secret) and whoever filed it for them; volunteers
/// and librarians see it once it is filed. A case that an actor may not see is answered as if it did not exist.
/// </summary>
public static class CaseAccess
{
    /// <summary>Between secrets, where a guest holds the links of several cases.</summary>
    public const char KeySeparator = '.';

    /// <summary>What is kept of a guest's secret.</summary>
    public static string HashOf(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    public static bool IsOwner(Actor actor, CaseRow row) =>
        (actor.UserId is { } id && row.OwnerId == id) || HoldsKey(actor.GuestKey, row.GuestKeyHash);

    /// <summary>The owner, or the volunteer who filed it at the counter and answers for the owner.</summary>
    public static bool SpeaksForOwner(Actor actor, CaseRow row) =>
        IsOwner(actor, row) || (actor.UserId is { } id && row.FiledForById == id);

    public static bool MaySee(Actor actor, CaseRow row) =>
        SpeaksForOwner(actor, row) || (actor.IsVolunteer && row.FiledAt is not null);

    /// <summary>Why this actor may not give an opinion on the case; null when it is theirs to give.</summary>
    public static Refusal? WhyNotReview(Actor actor, CaseRow row)
    {
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        if (!MaySee(actor, row)) return CaseRefusals.NotFound;
        return SpeaksForOwner(actor, row) ? CaseRefusals.OwnCase : null;
    }

    /// <summary>
    /// Why this actor does not see the odds yet; null when they do. A volunteer who could still give an opinion must not lean on the
    /// odds, so they open with the seal.
    /// </summary>
    /// <param name="hasSealed">Whether this actor sealed an opinion in the case's round.</param>
    public static Refusal? WhyNoOdds(Actor actor, CaseRow row, bool hasSealed)
    {
        if (!MaySee(actor, row)) return CaseRefusals.NotFound;
        if (SpeaksForOwner(actor, row) || hasSealed || IsFinished(row)) return null;
        return CaseRefusals.SealFirst;
    }

    public static bool IsFinished(CaseRow row) => row.State is CaseState.Determined or CaseState.Closed;

    /// <summary>The case, tracked, for a change by whoever speaks for its owner.</summary>
    public static async Task<Outcome<CaseRow>> OwnToChangeAsync(LibraryDbContext db, Actor actor, long caseId, CancellationToken stop)
    {
        var row = await db.Set<CaseRow>().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null || !MaySee(actor, row)) return CaseRefusals.NotFound;
        if (!SpeaksForOwner(actor, row)) return PeopleRefusals.NotYours;
        return IsFinished(row) ? CaseRefusals.Finished : row;
    }

    /// <summary>The case, tracked, for a change by anybody who sees it.</summary>
    public static async Task<Outcome<CaseRow>> SeenToChangeAsync(LibraryDbContext db, Actor actor, long caseId, CancellationToken stop)
    {
        var row = await db.Set<CaseRow>().SingleOrDefaultAsync(c => c.Id == caseId, stop);
        if (row is null || !MaySee(actor, row)) return CaseRefusals.NotFound;
        return IsFinished(row) ? CaseRefusals.Finished : row;
    }

    // Hashes are compared in constant time, so that the time taken tells nothing of a secret.
    private static bool HoldsKey(string? keys, string? hash)
    {
        if (keys is null || hash is null) return false;
        var expected = Encoding.ASCII.GetBytes(hash);
        var held = false;
        foreach (var key in keys.Split(KeySeparator))
        {
            held |= CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(HashOf(key)), expected);
        }
        return held;
    }
}
