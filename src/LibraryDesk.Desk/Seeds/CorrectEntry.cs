using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Rules;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Undoes an entry of the ledger by a new one that says what it corrects and why. The earlier entry stays as it was.</summary>
public sealed class CorrectEntry(SeedLedger ledger)
{
    public const string DamagedCode = "correction.damaged";

    /// <param name="actor">A librarian.</param>
    /// <param name="sequence">The entry's number.</param>
    /// <param name="why">In words.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<Corrected>> RunAsync(Actor actor, long sequence, string? why, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => CorrectAsync(work, sequence, null, why), stop)
            : Task.FromResult<Outcome<Corrected>>(PeopleRefusals.LibrariansOnly);

    /// <summary>Undoes an entry, or says it again rightly, within an act that is at work.</summary>
    internal static async Task<Outcome<Corrected>> CorrectAsync(SeedWork work, long sequence, SeedAct? instead, string? why)
    {
        var row = await work.Db.Set<LedgerEntryRow>().AsNoTracking().SingleOrDefaultAsync(entry => entry.Sequence == sequence, work.Stop);
        if (row is null) return FindingRefusals.NoEntry;
        if (row.ToEntry() is not { } entry) return new Refusal(DamagedCode, $"Entry {sequence} is damaged. Run desk verify before anything else.");
        await LoadForAsync(work, entry);
        var correctedAlready = await CorrectedAlreadyAsync(work, entry);

        if (!CorrectionRules.Correct(entry, correctedAlready, instead, why, work.CopyOfState()).TryGet(out var correction, out var no)) return no;

        work.Append(correction);
        // A determination whose claim is undone can be claimed for the right lot.
        if (entry.ReadAct() is Named { Evidence: not null })
        {
            foreach (var determination in await work.Db.Set<DeterminationRow>().Where(made => made.ClaimSequence == sequence).ToListAsync(work.Stop)) determination.ClaimSequence = null;
        }
        if (entry.ReadAct() is Released released && work.State.Find(released.Hold) is { } hold) await RecallAnswers.RenewAsync(work, hold);
        return correction;
    }

    private static async Task<bool> CorrectedAlreadyAsync(SeedWork work, LedgerEntry entry)
    {
        var kind = SeedActJson.NameOf(EntryKind.Corrected);
        var nodes = entry.Subjects.Select(node => node.Value).ToArray();
        var later = await work.Db.Set<LedgerEntryRow>().AsNoTracking()
            .Where(row => row.Kind == kind && row.Sequence > entry.Sequence
                && work.Db.Set<LedgerSubjectRow>().Any(subject => subject.Sequence == row.Sequence && nodes.Contains(subject.NodeId)))
            .OrderBy(row => row.Sequence).ToListAsync(work.Stop);
        return later.Any(row => row.ToEntry()?.ReadAct() is Corrected corrected && corrected.Entry == entry.Sequence);
    }

    // The state that undoing the entry touches: its nodes, and the loans, requests, holds, claims and tests it names.
    private static async Task LoadForAsync(SeedWork work, LedgerEntry entry)
    {
        foreach (var node in entry.Subjects) await work.LoadNodeAsync(node);
        await LoadNamedAsync(work, entry.Sequence, entry.ReadAct());
    }

    private static async Task LoadNamedAsync(SeedWork work, long sequence, SeedAct act)
    {
        var db = work.Db;
        switch (act)
        {
            case Corrected corrected:
                if (corrected.Instead is { } instead) await LoadNamedAsync(work, sequence, instead.Act);
                break;
            case LoanEnded ended: await work.LoanAsync(ended.Loan.Value); break;
            case Returned { Loan: { } loan }: await work.LoanAsync(loan.Value); break;
            case GrownOut { Loan: { } loan }: await work.LoanAsync(loan.Value); break;
            case Lent lent:
                await work.LoanAsync(lent.Loan.Value);
                if (lent.Request is { } answered) await work.RequestAsync(answered.Value);
                break;
            case Requested requested: await work.RequestAsync(requested.Request.Value); break;
            case Picked picked: await work.RequestAsync(picked.Request.Value); break;
            case Held held: await work.HoldAsync(held.Hold.Value); break;
            case Released released: await work.HoldAsync(released.Hold.Value); break;
            case Recalled recalled: await work.HoldAsync(recalled.Hold.Value); break;
            case Named named:
                if (await db.Set<NameClaimRow>().SingleOrDefaultAsync(claim => claim.Id == named.Claim.Value, work.Stop) is { } claimRow) work.Keep(claimRow);
                break;
            case GerminationTested tested:
                if (await db.Set<GerminationTestRow>().SingleOrDefaultAsync(test => test.Id == tested.Test.Value, work.Stop) is { } testRow) work.Keep(testRow);
                break;
            case TransferredOut:
                if (await db.Set<SeedTransferRow>().SingleOrDefaultAsync(transfer => transfer.Entry == sequence, work.Stop) is { } transferRow) work.Keep(transferRow);
                break;
        }
    }
}
