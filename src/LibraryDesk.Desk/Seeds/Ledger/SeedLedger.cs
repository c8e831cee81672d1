using System.Collections.Concurrent;
using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>
/// Where every act on seed is written: one short transaction under the ledger lock, in which the act loads what it needs, decides, and
/// appends. A refusal leaves nothing behind. Clerks who come while another's act is being written wait in order, and those who waited are
/// written together: one lock and one commit for all of them. Nobody is answered before their act is committed.
/// </summary>
public sealed class SeedLedger(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, LibraryClock clock)
{
    private const int MostTogether = 16;
    private readonly ConcurrentQueue<WaitingAct> _waiting = new();
    private int _isWriting;

    internal Task<Outcome<T>> RecordAsync<T>(Actor actor, Func<SeedWork, Task<Outcome<T>>> act, CancellationToken stop)
        where T : notnull
    {
        var person = new PersonId(actor.UserId ?? throw new InvalidOperationException("An act on seed needs somebody signed in; check that first."));
        var waiting = new WaitingAct<T>(person, act, stop);
        _waiting.Enqueue(waiting);
        WriteOn();
        return waiting.Answer;
    }

    // Whoever comes first writes, and goes on for those who came meanwhile.
    private void WriteOn()
    {
        if (Interlocked.Exchange(ref _isWriting, 1) == 1) return;
        using (ExecutionContext.SuppressFlow()) _ = Task.Run(WriteAsync);
    }

    private async Task WriteAsync()
    {
        try
        {
            var together = new List<WaitingAct>();
            while (_waiting.TryDequeue(out var next))
            {
                if (!next.IsCalledOff) together.Add(next);
                if (together.Count < MostTogether && !_waiting.IsEmpty) continue;
                await WriteAsync(together);
                together.Clear();
            }
        }
        finally
        {
            Volatile.Write(ref _isWriting, 0);
            if (!_waiting.IsEmpty) WriteOn();
        }
    }

    // An act that breaks would take the others with it, so then each is written alone.
    private async Task WriteAsync(List<WaitingAct> acts)
    {
        if (acts.Count == 0 || (acts.Count > 1 && await AreWrittenAsync(acts))) return;
        foreach (var act in acts)
        {
            if (!await AreWrittenAsync([act])) act.Fail();
        }
    }

    // True when every act has its answer; false when one broke and nothing was written.
    private async Task<bool> AreWrittenAsync(List<WaitingAct> acts)
    {
        try
        {
            await using var db = await factory.CreateDbContextAsync();
            return await db.Database.CreateExecutionStrategy().ExecuteAsync(() => InTransactionAsync(db, acts));
        }
        catch (Exception broken)
        {
            // Before a single act began, or at the commit: whether it was written is not known, so it is not tried again.
            foreach (var act in acts) act.Fail(broken);
            return true;
        }
    }

    private async Task<bool> InTransactionAsync(LibraryDbContext db, List<WaitingAct> acts)
    {
        db.ChangeTracker.Clear();
        // An act that fails is undone whole, so a savepoint within it would be a round trip for nothing.
        db.Database.AutoSavepointsEnabled = false;
        await using var transaction = await db.Database.BeginTransactionAsync();
        var head = await provider.LockLedgerAsync(db, CancellationToken.None);
        if (head is null) db.Add(head = new LedgerHeadRow { Hash = default(Lineage.Ledger.EntryHash).Hex });
        var any = false;
        foreach (var act in acts)
        {
            var isNew = db.Entry(head).State == EntityState.Added;
            var before = new LedgerHeadRow { Height = head.Height, Hash = head.Hash, LastSeedId = head.LastSeedId };
            var now = clock.Now;
            var work = new SeedWork(db, head, act.Person, now, clock.DayOf(now), act.Stop);
            if (!await act.TryAsync(work)) return false;
            if (act.IsAllowed) any = true;
            // What a refused act began is forgotten; an allowed one is saved, and the next begins with a clean slate and the new head.
            db.ChangeTracker.Clear();
            head = act.IsAllowed ? new LedgerHeadRow { Height = head.Height, Hash = head.Hash, LastSeedId = head.LastSeedId } : before;
            if (isNew && !act.IsAllowed) db.Add(head);
            else db.Attach(head);
        }
        // Once begun, a commit is waited for: giving up on it would leave the clerks in the dark.
        if (any) await transaction.CommitAsync(CancellationToken.None);
        foreach (var act in acts) act.Tell();
        return true;
    }
}
