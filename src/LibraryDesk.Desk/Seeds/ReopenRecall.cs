using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Opens a closed recall again: its closing is corrected, and packets that left meanwhile come onto its list.</summary>
public sealed class ReopenRecall(SeedLedger ledger)
{
    public const string OpenCode = "recall.open";

    /// <param name="actor">A librarian.</param>
    /// <param name="holdId">Its number.</param>
    /// <param name="why">In words, without anything about a person.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<Hold>> RunAsync(Actor actor, long holdId, string? why, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<Hold>(actor, async work =>
            {
                if (!(await work.HoldAsync(holdId)).TryGet(out var hold, out var noHold)) return noHold;
                if (hold.Stands || await ClosingAsync(work, hold) is not { } closing) return new Refusal(OpenCode, "This recall is open, so there is nothing to open again.");
                return (await CorrectEntry.CorrectAsync(work, closing, null, why)).Then<Hold>(_ => work.State.Find(hold.Id)!);
            }, stop)
            : Task.FromResult<Outcome<Hold>>(PeopleRefusals.LibrariansOnly);

    // A recall may have been closed more than once; the last closing is the one that stands.
    private static async Task<long?> ClosingAsync(SeedWork work, Hold hold)
    {
        var (kind, node) = (SeedActJson.NameOf(EntryKind.Released), hold.Node.Value);
        var closings = await work.Db.Set<LedgerEntryRow>().AsNoTracking()
            .Where(row => row.Kind == kind && work.Db.Set<LedgerSubjectRow>().Any(subject => subject.NodeId == node && subject.Sequence == row.Sequence))
            .OrderByDescending(row => row.Sequence).ToListAsync(work.Stop);
        return closings.FirstOrDefault(row => row.ToEntry()?.ReadAct() is Released released && released.Hold == hold.Id)?.Sequence;
    }
}
