using LibraryDesk.Data;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>Writes one large library into several databases at once, entries as they are made and the derived rows at the end.</summary>
internal sealed class LibraryFill(IReadOnlyList<LibraryDbContext> databases)
{
    private const int AtOnce = 50_000;

    public async Task RunAsync(LargeLibrary library)
    {
        foreach (var db in databases) await db.Database.OpenConnectionAsync();
        foreach (var some in library.Entries().Chunk(AtOnce))
        {
            Write(some.Select(entry => entry.ToRow()).ToArray());
            Write(some.SelectMany(entry => entry.Subjects.Select(subject => new LedgerSubjectRow { NodeId = subject.Value, Sequence = entry.Sequence })).ToArray());
        }

        var state = library.State;
        Write(InventedNames.Donors(new Random(1), library.Members));
        Write(InventedNames.Records(new Random(2), state.Claims.Select(claim => (claim.Species!, claim.Variety!)).Distinct()));
        Chunked(state.Accessions, record => record.ToRow());
        Chunked(state.Lots, record => record.ToRow());
        Chunked(state.Packets, record => record.ToRow());
        Chunked(state.GrowOuts, record => record.ToRow());
        Chunked(state.Loans, record => record.ToRow());
        Chunked(state.Claims, record => record.ToRow());
        Chunked(state.Edges, record => record.ToRow());
        Write(library.Series.Select(series => new CodeSeriesRow { Kind = series.Key.Kind, Year = series.Key.Year, LastNumber = series.Value }).ToArray());
        Write([new LedgerHeadRow { Height = library.Head.Height, Hash = library.Head.Hash.Hex, LastSeedId = library.Ids.Last }]);
        foreach (var db in databases)
        {
            // Statistics, as both databases keep them by themselves after a while.
            await db.Database.ExecuteSqlRawAsync(db.Database.IsNpgsql() ? "VACUUM ANALYZE" : "ANALYZE");
            await db.Database.CloseConnectionAsync();
        }
    }

    private void Chunked<TRecord, TRow>(IEnumerable<TRecord> records, Func<TRecord, TRow> toRow)
        where TRow : class
    {
        foreach (var some in records.Chunk(AtOnce)) Write(some.Select(toRow).ToArray());
    }

    private void Write<TRow>(TRow[] rows)
        where TRow : class
    {
        Parallel.ForEach(databases, db => new BulkTable(db.Model.FindEntityType(typeof(TRow))!).Write(db.Database.GetDbConnection(), rows));
    }
}
