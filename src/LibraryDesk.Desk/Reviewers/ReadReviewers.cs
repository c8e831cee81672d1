using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Identification.Consensus;

namespace LibraryDesk.Desk.Reviewers;

/// <summary>One volunteer's line.</summary>
/// <param name="Name">Null in a volunteer's own view, and for somebody whose account was erased.</param>
/// <param name="IsMine">True for the reader's own line.</param>
/// <param name="CouldNotTell">Opinions that these looks do not tell; they count neither way.</param>
/// <param name="SameAsDetermined">Opinions that named what the case was determined as.</param>
/// <param name="Reliability">Null while there is no opinion that names a kind.</param>
public sealed record ReviewerLine(Guid Id, string? Name, bool IsMine, int CouldNotTell, int SameAsDetermined, RaterReliability? Reliability);

/// <summary>How the volunteers judge, from sealed opinions on finished cases.</summary>
/// <param name="Cases">Finished cases with a sealed opinion that names a kind.</param>
/// <param name="Lines">All volunteers for a librarian, the most opinions first; a volunteer's own line alone for a volunteer.</param>
/// <param name="PairedCases">Cases with two such opinions or more, which agreement is reckoned from.</param>
/// <param name="Agreement">Fleiss' kappa of the first two sealed opinions of each; null with none, and for a volunteer.</param>
/// <param name="Interval">Its middle 95 % over re-drawn cases; null where it cannot be told.</param>
public sealed record ReviewersView(int Cases, IReadOnlyList<ReviewerLine> Lines, int PairedCases, KappaResult? Agreement, (double Low, double High)? Interval);

/// <summary>
/// Reliability of the volunteers by what they said before they saw any odds or any other opinion. Librarians see people; a volunteer sees only themselves.
/// </summary>
public sealed class ReadReviewers(IDbContextFactory<LibraryDbContext> factory)
{
    private const int Most = 20_000;

    public async Task<Outcome<ReviewersView>> RunAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        // A finished round: the one that was determined and stands. Its crop keeps kinds of different guides apart.
        var opinions = await (
            from opinion in db.Set<OpinionRow>()
            join determination in db.Set<DeterminationRow>() on new { opinion.CaseId, opinion.Round } equals new { determination.CaseId, determination.Round }
            where determination.SupersededAt == null
            orderby opinion.SealedAt, opinion.Id
            select new Sealed(opinion.CaseId, opinion.VolunteerId, opinion.SealedTaxon, determination.Taxon)).Take(Most).ToListAsync(stop);
        var ids = opinions.Select(o => o.VolunteerId).Append(actor.UserId ?? Guid.Empty).Distinct().ToArray();
        var names = actor.IsLibrarian
            ? await db.Users.Where(u => ids.Contains(u.Id)).OrderBy(u => u.Id).Select(u => new { u.Id, u.DisplayName }).ToDictionaryAsync(u => u.Id, u => u.DisplayName, stop)
            : [];
        return View(actor, opinions, names);
    }

    private static ReviewersView View(Actor actor, List<Sealed> opinions, Dictionary<Guid, string> names)
    {
        var telling = opinions.Where(o => o.Taxon != NamedTaxon.CannotTell).ToList();
        var (cases, people) = (Numbers(telling.Select(o => o.CaseId)), Numbers(opinions.Select(o => o.VolunteerId)));
        var kinds = Numbers(telling.SelectMany(o => new[] { o.Taxon, o.Determined }));
        // The determination is one judge more: it came after the odds, the reasons and the origin, so two who differ are not left tied.
        var desk = people.Count;
        Vote[] votes =
        [
            .. telling.Select(o => new Vote(cases[o.CaseId], people[o.VolunteerId], kinds[o.Taxon])),
            .. telling.DistinctBy(o => o.CaseId).Select(o => new Vote(cases[o.CaseId], desk, kinds[o.Determined])),
        ];
        var fit = Reliability.Of(votes, cases.Count, people.Count + 1, kinds.Count);
        var lines = people.Keys
            .Where(id => actor.IsLibrarian || id == actor.UserId)
            .Select(id => new ReviewerLine(
                id,
                names.GetValueOrDefault(id) is { Length: > 0 } name ? name : null,
                id == actor.UserId,
                opinions.Count(o => o.VolunteerId == id && o.Taxon == NamedTaxon.CannotTell),
                telling.Count(o => o.VolunteerId == id && o.Taxon == o.Determined),
                fit?[people[id]] is { Votes: > 0 } known ? known : null))
            .OrderByDescending(line => line.Reliability?.Votes ?? 0).ThenBy(line => line.Name, StringComparer.Ordinal)
            .ToList();
        var pairs = telling.GroupBy(o => o.CaseId).Where(g => g.Count() > 1).Select(g => Counts(g.Take(2), kinds)).ToList();
        int[][] paired = actor.IsLibrarian ? [.. pairs] : [];
        return new ReviewersView(cases.Count, lines, pairs.Count, Agreement.Fleiss(paired), Agreement.FleissInterval(paired));
    }

    private static int[] Counts(IEnumerable<Sealed> two, Dictionary<string, int> kinds)
    {
        var counts = new int[kinds.Count];
        foreach (var one in two) counts[kinds[one.Taxon]]++;
        return counts;
    }

    private static Dictionary<T, int> Numbers<T>(IEnumerable<T> items)
        where T : notnull
    {
        var numbers = new Dictionary<T, int>();
        foreach (var item in items) numbers.TryAdd(item, numbers.Count);
        return numbers;
    }

    private sealed record Sealed(long CaseId, Guid VolunteerId, string Taxon, string Determined);
}
