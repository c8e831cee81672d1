using System.Data.Common;
using System.Globalization;
using System.Threading.Channels;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Walks the whole ledger, a few thousand entries in memory at a time, and names the first entry that does not fit.</summary>
public sealed class VerifyLedger(IDbContextFactory<LibraryDbContext> factory)
{
    // Few enough to be gone again before the collector looks.
    private const int BatchSize = 128;
    private const int BatchesAhead = 4;

    /// <param name="actor">A librarian, or the command line.</param>
    /// <param name="checkpoint">A head that was printed or mailed earlier, as it was printed; null for none.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<ChainReport>> RunAsync(Actor actor, string? checkpoint, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        var heads = new List<ChainHead>();
        if (!string.IsNullOrWhiteSpace(checkpoint))
        {
            if (!ChainHead.Read(checkpoint).TryGet(out var kept, out var no)) return no;
            heads.Add(kept);
        }

        // Read first: entries that other clerks append while the walk goes on only make the chain longer.
        var end = await HeadAsync(stop);
        if (end is { } noted)
        {
            if (!EntryHash.TryParse(noted.Hash, out var hash)) return UnreadableEnd(noted);
            if (!heads.Exists(head => head.Height == noted.Height)) heads.Add(new(noted.Height, hash));
        }
        var report = await WalkAsync(heads, stop);
        return report.IsSound ? await EndAsync(report, stop) : report;
    }

    // One task reads and the other hashes: a machine with two processors does both at once.
    private async Task<ChainReport> WalkAsync(IEnumerable<ChainHead> heads, CancellationToken stop)
    {
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var batches = Channel.CreateBounded<Batch>(BatchesAhead);
        var reading = Task.Run(() => ReadAsync(batches.Writer, enough.Token), CancellationToken.None);
        var walk = new ChainWalk(ChainHead.Empty, heads);
        ChainReport? found = null;
        await foreach (var batch in batches.Reader.ReadAllAsync(CancellationToken.None))
        {
            found = Step(walk, batch);
            if (found is null) continue;
            await enough.CancelAsync();
            break;
        }
        try
        {
            await reading;
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            // The fault was found; the rest need not be read.
        }
        return found ?? walk.Finish();
    }

    private async Task ReadAsync(ChannelWriter<Batch> batches, CancellationToken stop)
    {
        var rows = new List<LedgerEntryRow>(BatchSize);
        try
        {
            await using var db = await factory.CreateDbContextAsync(stop);
            await db.Database.OpenConnectionAsync(stop);
            await using var all = db.Database.GetDbConnection().CreateCommand();
            all.CommandText = "SELECT sequence, at, actor_id, kind, subjects, payload, previous_hash, hash FROM ledger_entries ORDER BY sequence";
            all.CommandTimeout = 0;
            await using var read = await all.ExecuteReaderAsync(stop);
            var countsTicks = read.GetFieldType(1) == typeof(long);
            // This task has a thread of its own anyway.
            while (read.Read())
            {
                rows.Add(Row(read, countsTicks));
                if (rows.Count < BatchSize) continue;
                await batches.WriteAsync(new(rows, BreaksOff: false), stop);
                rows = new(BatchSize);
            }
            await batches.WriteAsync(new(rows, BreaksOff: false), stop);
            batches.Complete();
        }
        catch (Exception broken) when (broken is FormatException or InvalidCastException or OverflowException or ArgumentException)
        {
            // A time or a person of the next entry is none. SQLite keeps whatever is put into a column.
            await batches.WriteAsync(new(rows, BreaksOff: true), stop);
            batches.Complete();
        }
        catch (Exception broken)
        {
            batches.Complete(broken is OperationCanceledException ? null : broken);
            throw;
        }
    }

    // By hand: for a million rows the model's own way of reading takes longer than the hashing.
    private static LedgerEntryRow Row(DbDataReader read, bool countsTicks) => new()
    {
        Sequence = read.GetInt64(0),
        At = new DateTimeOffset(countsTicks ? read.GetInt64(1) : read.GetDateTime(1).Ticks, TimeSpan.Zero),
        ActorId = read.GetGuid(2),
        Kind = read.GetString(3),
        Subjects = read.GetString(4),
        Payload = read.GetString(5),
        PreviousHash = read.GetString(6),
        Hash = read.GetString(7),
    };

    private static ChainReport? Step(ChainWalk walk, Batch batch)
    {
        foreach (var row in batch.Rows)
        {
            if (row.ToEntry() is not { } entry) return new(walk.Head, Unreadable(row.Sequence));
            if (walk.Step(entry) is { } fault) return new(walk.Head, fault);
        }
        return batch.BreaksOff ? new(walk.Head, Unreadable(walk.Head.Height + 1)) : null;
    }

    private static ChainFault Unreadable(long sequence) =>
        new(sequence, ChainFaultKind.Form, string.Create(CultureInfo.InvariantCulture, $"Entry {sequence} has been changed: a part of it cannot be read."));

    // Entries past the noted end were put there by no act of the desk: an act moves the end in the same transaction.
    private async Task<Outcome<ChainReport>> EndAsync(ChainReport report, CancellationToken stop)
    {
        var end = await HeadAsync(stop);
        if (report.Head.Height <= (end?.Height ?? 0)) return report;
        var first = (end?.Height ?? 0) + 1;
        return report with { Fault = new(first, ChainFaultKind.Checkpoint, string.Create(CultureInfo.InvariantCulture, $"Entry {first} stands past the end that is noted beside the ledger, entry {first - 1}.")) };
    }

    private static ChainReport UnreadableEnd(LedgerHeadRow end) =>
        new(ChainHead.Empty, new(end.Height, ChainFaultKind.Checkpoint, string.Create(CultureInfo.InvariantCulture, $"The end noted beside the ledger, entry {end.Height}, cannot be read.")));

    private async Task<LedgerHeadRow?> HeadAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Set<LedgerHeadRow>().AsNoTracking().SingleOrDefaultAsync(stop);
    }

    /// <summary>Some entries as they were read.</summary>
    /// <param name="Rows">The entries.</param>
    /// <param name="BreaksOff">True when the entry after them cannot be read at all.</param>
    private sealed record Batch(List<LedgerEntryRow> Rows, bool BreaksOff);
}
