using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;

namespace LibraryDesk.Desk.People;

/// <summary>A case as the page of its owner names it.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Title">What its owner calls it.</param>
/// <param name="State">How far it is.</param>
/// <param name="FiledAt">When it was filed.</param>
public sealed record FiledCase(long Id, string Title, CaseState State, DateTimeOffset FiledAt);

/// <summary>A packet that is called back, of which this person has not said what became of it.</summary>
/// <param name="HoldId">The recall.</param>
/// <param name="PacketCode">The packet.</param>
/// <param name="Reason">Why it is called back.</param>
/// <param name="ToldAt">When they were told; null while they were not.</param>
public sealed record OwedAnswer(long HoldId, string PacketCode, string Reason, DateTimeOffset? ToldAt);

/// <summary>What the library has to do with one person.</summary>
/// <param name="Person">Who.</param>
/// <param name="Loans">Their loans, newest first, at most <see cref="MemberLoans.MostRows"/>.</param>
/// <param name="CameHome">Lots made of seed that came home, by the loan it was grown from.</param>
/// <param name="Requests">What they asked for and wait for, oldest first.</param>
/// <param name="Owed">Recalled packets they have not answered for, oldest recall first.</param>
/// <param name="Cases">Cases they own and filed, newest first, at most <see cref="ReadPerson.MostCases"/>. Drafts are theirs alone.</param>
public sealed record PersonRecord(
    PersonView Person, IReadOnlyList<MemberLoan> Loans, ILookup<long, string> CameHome, IReadOnlyList<WaitingRequest> Requests, IReadOnlyList<OwedAnswer> Owed, IReadOnlyList<FiledCase> Cases);

/// <summary>Reads what a librarian at the counter needs to know of one person.</summary>
public sealed class ReadPerson(IDbContextFactory<LibraryDbContext> factory, PeopleDirectory people, MemberLoans loans, WaitingRequests requests)
{
    public const int MostCases = 200;

    public async Task<Outcome<PersonRecord>> RunAsync(Actor actor, Guid id, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!(await people.ByIdAsync(actor, id, stop)).TryGet(out var person, out var noPerson)) return noPerson;
        if (!(await loans.OfAsync(actor, id, stop)).TryGet(out var lent, out var noLoans)) return noLoans;
        if (!(await requests.OfAsync(actor, id, stop)).TryGet(out var waiting, out var noRequests)) return noRequests;

        await using var db = await factory.CreateDbContextAsync(stop);
        var ended = lent.Loans.Where(loan => !loan.IsOpen).Select(loan => loan.LoanId).ToArray();
        var home = await db.Set<GrowOutRow>().Where(grown => grown.LoanId != null && ended.Contains(grown.LoanId.Value) && !grown.IsVoid)
            .Join(db.Set<LineageEdgeRow>(), grown => grown.Id, edge => edge.ParentId, (grown, edge) => new { Loan = grown.LoanId!.Value, edge.ChildId })
            .Join(db.Set<LotRow>().Where(lot => !lot.IsVoid), edge => edge.ChildId, lot => lot.Id, (edge, lot) => new { edge.Loan, lot.Code }).OrderBy(lot => lot.Code).ToListAsync(stop);
        var owed = await db.Set<RecallAnswerRow>().Where(answer => answer.PersonId == id && answer.Answer == null)
            .Join(db.Set<HoldRow>().Where(hold => hold.ReleasedOn == null && !hold.IsVoid), answer => answer.HoldId, hold => hold.Id, (answer, hold) => answer)
            .Join(db.Set<RecallRow>(), answer => answer.HoldId, recall => recall.HoldId, (answer, recall) => new { answer.HoldId, answer.PacketId, answer.ToldAt, recall.Reason })
            .Join(db.Set<PacketRow>(), answer => answer.PacketId, packet => packet.Id, (answer, packet) => new { answer.HoldId, packet.Code, answer.Reason, answer.ToldAt })
            .OrderBy(answer => answer.HoldId).ThenBy(answer => answer.Code).Take(MemberLoans.MostRows).ToListAsync(stop);
        var cases = await db.Set<CaseRow>().Where(row => row.OwnerId == id && row.FiledAt != null).OrderByDescending(row => row.Id).Take(MostCases)
            .Select(row => new FiledCase(row.Id, row.Title, row.State, row.FiledAt!.Value)).ToListAsync(stop);

        return new PersonRecord(
            person, lent.Loans, home.ToLookup(lot => lot.Loan, lot => lot.Code), waiting.Requests,
            [.. owed.Select(answer => new OwedAnswer(answer.HoldId, answer.Code, answer.Reason, answer.ToldAt))], cases);
    }
}
