using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>What became of a checkpoint that was kept elsewhere.</summary>
public enum CheckpointStanding
{
    /// <summary>The ledger is whole and still goes through it.</summary>
    Holds,

    /// <summary>Its number is beyond the end of the ledger.</summary>
    Beyond,

    /// <summary>The entry of its number has another hash.</summary>
    OtherHash,

    /// <summary>The ledger itself does not fit at some entry.</summary>
    Damaged,
}

/// <summary>A checkpoint as it was checked.</summary>
/// <param name="Kept">What was kept; null where the ledger was walked without one.</param>
/// <param name="End">Where the ledger ends.</param>
/// <param name="Standing">What came of it.</param>
/// <param name="Differing">Characters of its hash that differ from the entry's; 0 unless it has another hash.</param>
/// <param name="Fault">The first entry that does not fit; null unless damaged.</param>
/// <param name="Took">How long the walk took; zero where none was needed.</param>
public sealed record CheckedCheckpoint(ChainHead? Kept, ChainHead End, CheckpointStanding Standing, int Differing, ChainFault? Fault, TimeSpan Took);

/// <summary>Checks a checkpoint that was printed or mailed: first against the entry of its number, then by walking the whole ledger, entry by entry.</summary>
public sealed class CheckCheckpoint(IDbContextFactory<LibraryDbContext> factory, LedgerCheckpoint end, VerifyLedger verify, TimeProvider clock)
{
    /// <param name="actor">A librarian.</param>
    /// <param name="typed">The checkpoint as it was printed; nothing to walk the ledger alone.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<CheckedCheckpoint>> RunAsync(Actor actor, string? typed, CancellationToken stop)
    {
        if (!(await end.RunAsync(actor, stop)).TryGet(out var head, out var no)) return no;
        ChainHead? kept = null;
        if (!string.IsNullOrWhiteSpace(typed))
        {
            if (!ChainHead.Read(typed).TryGet(out var read, out var unreadable)) return unreadable;
            if (read.Height > head.Height) return new CheckedCheckpoint(read, head, CheckpointStanding.Beyond, 0, null, TimeSpan.Zero);
            // A slip of the pen shows at once; the walk is for what nobody sees.
            if (Differing(read.Hash.Hex, await HashAsync(read.Height, stop)) is > 0 and var differing)
                return new CheckedCheckpoint(read, head, CheckpointStanding.OtherHash, differing, null, TimeSpan.Zero);
            kept = read;
        }

        var begun = clock.GetTimestamp();
        if (!(await verify.RunAsync(actor, kept?.ToString(), stop)).TryGet(out var report, out var refused)) return refused;
        var standing = report.IsSound ? CheckpointStanding.Holds : CheckpointStanding.Damaged;
        return new CheckedCheckpoint(kept, report.IsSound ? report.Head : head, standing, 0, report.Fault, clock.GetElapsedTime(begun));
    }

    // Null where the entry is missing, which the walk will say.
    private async Task<string?> HashAsync(long height, CancellationToken stop)
    {
        if (height == 0) return ChainHead.Empty.Hash.Hex;
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Set<LedgerEntryRow>().Where(entry => entry.Sequence == height).Select(entry => entry.Hash).SingleOrDefaultAsync(stop);
    }

    private static int Differing(string kept, string? found) =>
        found is null ? 0 : kept.Zip(found).Count(pair => pair.First != pair.Second) + Math.Abs(kept.Length - found.Length);
}
