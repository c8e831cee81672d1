using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Ends a loan that brings no seed home: unopened, failed, eaten, or nothing came back. For seed that comes home see <see cref="ReturnSeed"/>.</summary>
public sealed class EndLoan(SeedLedger ledger)
{
    /// <param name="actor">The borrower, or a librarian. Only a librarian puts an unopened packet back on the shelf.</param>
    /// <param name="loanId">The loan.</param>
    /// <param name="ending">How it ended.</param>
    /// <param name="endedOn">The day; null for today.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<Loan>> RunAsync(Actor actor, long loanId, LoanEnding ending, DateOnly? endedOn, CancellationToken stop) =>
        actor.IsSignedIn
            ? ledger.RecordAsync<Loan>(actor, async work =>
            {
                if (!(await work.LoanAsync(loanId)).TryGet(out var loan, out var noLoan)) return noLoan;
                if (!actor.IsLibrarian && loan.Borrower != work.Person) return PeopleRefusals.NotYours;
                if (!actor.IsLibrarian && ending == LoanEnding.BroughtBack) return PeopleRefusals.LibrariansOnly;

                var packet = work.State.Find(loan.Packet)!;
                if (!LendingRules.End(loan, packet, ending, endedOn ?? work.Today, work.Today).TryGet(out var ended, out var no)) return no;

                work.Append(ended);
                return work.State.Find(loan.Id)!;
            }, stop)
            : Task.FromResult<Outcome<Loan>>(PeopleRefusals.SignInFirst);
}
