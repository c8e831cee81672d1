using System.Collections.Concurrent;
using System.Data.Common;
using System.Globalization;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Says of a packet, lot or accession where its seed came from, what became of it and who has it: the question on the day a name proves wrong.</summary>
public sealed class TraceSeed(IDbContextFactory<LibraryDbContext> factory) : IDisposable
{
    private const int MostAtOnce = 500;
    private const int MostKept = 4;
    private readonly ConcurrentBag<TraceQuestion> _kept = [];

    /// <param name="actor">A librarian, or the command line: the answer names people by their ids.</param>
    /// <param name="code">The code, as typed or scanned.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<SeedTrace>> ReadAsync(Actor actor, string? code, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (!AnyCode.Read(code).TryGet(out var read, out var no)) return no;
        return await AskAsync(read, stop) is { } trace ? trace : read.NotThere;
    }

    /// <summary>What the nodes of a trace are called: their codes, and "grow-out N" for what has none.</summary>
    public async Task<IReadOnlyDictionary<NodeId, string>> CodesAsync(SeedTrace trace, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(trace);
        await using var db = await factory.CreateDbContextAsync(stop);
        var codes = new Dictionary<NodeId, string>();
        foreach (var some in trace.Ancestors.Concat(trace.Descendants).Append(trace.Node).Select(node => node.Value).Chunk(MostAtOnce))
        {
            var known = db.Set<PacketRow>().Where(row => some.Contains(row.Id)).Select(row => new { row.Id, row.Code })
                .Concat(db.Set<LotRow>().Where(row => some.Contains(row.Id)).Select(row => new { row.Id, row.Code }))
                .Concat(db.Set<AccessionRow>().Where(row => some.Contains(row.Id)).Select(row => new { row.Id, row.Code }));
            foreach (var row in await known.ToListAsync(stop)) codes[new(row.Id)] = row.Code;
            foreach (var id in some) codes.TryAdd(new(id), string.Create(CultureInfo.InvariantCulture, $"grow-out {id}"));
        }
        return codes;
    }

    /// <inheritdoc />
    public void Dispose()
    {
        while (_kept.TryTake(out var question)) question.Dispose();
    }

    private async Task<SeedTrace?> AskAsync(AnyCode code, CancellationToken stop)
    {
        if (_kept.TryTake(out var kept))
        {
            try
            {
                return await AskAsync(kept, code, stop);
            }
            catch (Exception cut) when (cut is DbException or InvalidOperationException)
            {
                // The connection was cut since it was last used. A new one says whether the database is really away.
            }
        }
        return await AskAsync(await TraceQuestion.OpenAsync(factory, stop), code, stop);
    }

    // Kept for the next who asks, unless something went wrong with it.
    private async Task<SeedTrace?> AskAsync(TraceQuestion question, AnyCode code, CancellationToken stop)
    {
        var goesBack = false;
        try
        {
            var trace = await question.AskAsync(code, stop);
            goesBack = _kept.Count < MostKept;
            return trace;
        }
        finally
        {
            if (goesBack) _kept.Add(question);
            else question.Dispose();
        }
    }
}
