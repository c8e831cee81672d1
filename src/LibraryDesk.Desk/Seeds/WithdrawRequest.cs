using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Takes back what was asked for while nothing is put aside for it. The entry stays; a correction says that it was taken back.</summary>
public sealed class WithdrawRequest(SeedLedger ledger)
{
    public const string PutAsideCode = "request.put-aside";

    // What the correction in the ledger says; the ledger is kept in one language.
    private const string Why = "Taken back before a packet was put aside.";

    /// <param name="actor">Who asked, or a librarian.</param>
    /// <param name="requestId">The request's number.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<Corrected>> RunAsync(Actor actor, long requestId, CancellationToken stop) =>
        actor.IsSignedIn
            ? ledger.RecordAsync<Corrected>(actor, async work =>
            {
                if (!(await work.RequestAsync(requestId)).TryGet(out var request, out var noRequest)) return noRequest;

                if (request.By != work.Person && !actor.IsLibrarian) return PeopleRefusals.NotYours;
                if (request.Picked is not null || request.Loan is not null) return PutAside;

                return await CorrectEntry.CorrectAsync(work, await EntryOfAsync(work, request.Lot.Value, requestId), null, Why);
            }, stop)
            : Task.FromResult<Outcome<Corrected>>(PeopleRefusals.SignInFirst);

    private static async Task<long> EntryOfAsync(SeedWork work, long lot, long requestId)
    {
        var kind = SeedActJson.NameOf(EntryKind.Requested);
        var asked = await work.Db.Set<LedgerEntryRow>().AsNoTracking()
            .Where(row => row.Kind == kind && work.Db.Set<LedgerSubjectRow>().Any(subject => subject.Sequence == row.Sequence && subject.NodeId == lot))
            .OrderByDescending(row => row.Sequence).ToListAsync(work.Stop);
        return asked.First(row => row.ToEntry()?.ReadAct() is Requested act && act.Request.Value == requestId).Sequence;
    }

    private static Refusal PutAside { get; } = new(PutAsideCode, "A packet is put aside for you already. Tell the library that you do not want it.");
}
