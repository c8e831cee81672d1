using System.Globalization;
using System.Text.Json;
using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;
using Microsoft.EntityFrameworkCore.Metadata;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>What a rebuild found.</summary>
/// <param name="Entries">Entries replayed.</param>
/// <param name="Rows">Rows the ledger asks for.</param>
/// <param name="Differences">Rows that were missing, left over or different, as "table key: what"; the first hundred of them.</param>
/// <param name="DifferenceCount">How many there were.</param>
/// <param name="Repaired">True when the tables were set right.</param>
public sealed record RebuildReport(long Entries, long Rows, IReadOnlyList<string> Differences, long DifferenceCount, bool Repaired);

/// <summary>Works the derived tables out of the ledger again and compares them with what stands there. Holds the whole state in memory while it runs.</summary>
public sealed class RebuildState(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider)
{
    private const int MostNamed = 100;

    /// <param name="actor">A librarian, or the command line.</param>
    /// <param name="checkOnly">True to compare and change nothing.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<RebuildReport>> RunAsync(Actor actor, bool checkOnly, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Database.CreateExecutionStrategy().ExecuteAsync<Outcome<RebuildReport>>(async () =>
        {
            db.ChangeTracker.Clear();
            // The ledger stands still meanwhile, so that entries and tables are of one moment.
            await using var transaction = await db.Database.BeginTransactionAsync(stop);
            await provider.LockLedgerAsync(db, stop);
            var wanted = new DerivedRows();
            var entries = 0L;
            await foreach (var row in db.Set<LedgerEntryRow>().AsNoTracking().OrderBy(entry => entry.Sequence).AsAsyncEnumerable().WithCancellation(stop))
            {
                if (row.ToEntry() is not { } entry) return new Refusal("rebuild.damaged", string.Create(CultureInfo.InvariantCulture, $"Entry {row.Sequence} cannot be read. Run desk verify."));
                try
                {
                    wanted.Take(entry);
                }
                catch (Exception broken) when (broken is LedgerMisfitException or JsonException)
                {
                    return new Refusal("rebuild.misfit", $"{broken.Message} Run desk verify.");
                }
                entries++;
            }

            var tables = new TableComparison(db, MostNamed, stop);
            foreach (var (type, rows) in wanted.ByType()) await tables.CompareAsync(type, rows);
            if (!checkOnly && tables.DifferenceCount > 0)
            {
                await db.SaveChangesAsync(stop);
                await transaction.CommitAsync(stop);
            }
            return new RebuildReport(entries, wanted.Count, tables.Differences, tables.DifferenceCount, !checkOnly && tables.DifferenceCount > 0);
        });
    }
}

/// <summary>The rows that the ledger, replayed from its first entry, asks for.</summary>
internal sealed class DerivedRows
{
    private readonly SeedState _state = new();
    private readonly List<object> _ofEntries = [];
    private readonly Dictionary<(string Kind, int Year), int> _series = [];
    private ChainHead _head;

    public long Count { get; private set; }

    public void Take(LedgerEntry entry)
    {
        _state.Apply(entry);
        _head = Chain.HeadAfter(entry);
        _ofEntries.AddRange(entry.Subjects.Select(subject => new LedgerSubjectRow { NodeId = subject.Value, Sequence = entry.Sequence }));
        _ofEntries.AddRange(ChangeWriter.RecallRows(entry.ReadAct()));
    }

    public IEnumerable<(Type Type, IReadOnlyList<object> Rows)> ByType()
    {
        foreach (var accession in _state.Accessions) See("A", accession.Code.Year, accession.Code.Number);
        foreach (var lot in _state.Lots) See("L", lot.Code.Year, lot.Code.Number);
        foreach (var packet in _state.Packets) See("P", packet.Code.Year, packet.Code.Number);
        yield return Of(_state.Accessions.Select(record => record.ToRow()));
        yield return Of(_state.Lots.Select(record => record.ToRow()));
        yield return Of(_state.Edges.Select(record => record.ToRow()));
        yield return Of(_state.Packets.Select(record => record.ToRow()));
        yield return Of(_state.GrowOuts.Select(record => record.ToRow()));
        yield return Of(_state.Loans.Select(record => record.ToRow()));
        yield return Of(_state.Requests.Select(record => record.ToRow()));
        yield return Of(_state.Holds.Select(record => record.ToRow()));
        yield return Of(_state.Claims.Select(record => record.ToRow()));
        yield return Of(_state.Tests.Select(record => record.ToRow()));
        yield return Of(_state.Transfers.Select(record => record.ToRow()));
        yield return Of(_ofEntries.OfType<LedgerSubjectRow>());
        yield return Of(_ofEntries.OfType<RecallRow>());
        yield return Of(_ofEntries.OfType<RecallPacketRow>());
        yield return Of(_series.Select(series => new CodeSeriesRow { Kind = series.Key.Kind, Year = series.Key.Year, LastNumber = series.Value }));
        yield return Of(_head.Height == 0 ? [] : new[] { new LedgerHeadRow { Height = _head.Height, Hash = _head.Hash.Hex, LastSeedId = LastSeedId() } });
    }

    private (Type, IReadOnlyList<object>) Of<TRow>(IEnumerable<TRow> rows)
        where TRow : class
    {
        var list = rows.Cast<object>().ToList();
        Count += list.Count;
        return (typeof(TRow), list);
    }

    private void See(string kind, int year, int number) => _series[(kind, year)] = Math.Max(_series.GetValueOrDefault((kind, year)), number);

    // Nothing is ever taken out of the state, so the highest number in it is the last one handed out.
    private long LastSeedId() => new[]
    {
        _state.Accessions.Select(record => record.Id.Value), _state.Lots.Select(record => record.Id.Value), _state.Packets.Select(record => record.Id.Value),
        _state.GrowOuts.Select(record => record.Id.Value), _state.Loans.Select(record => record.Id.Value), _state.Requests.Select(record => record.Id.Value),
        _state.Holds.Select(record => record.Id.Value), _state.Claims.Select(record => record.Id.Value), _state.Tests.Select(record => record.Id.Value),
    }.SelectMany(ids => ids).DefaultIfEmpty().Max();
}

/// <summary>Compares wanted rows with a table, and marks what is to be changed.</summary>
internal sealed class TableComparison(LibraryDbContext db, int mostNamed, CancellationToken stop)
{
    private readonly List<string> _differences = [];

    public IReadOnlyList<string> Differences => _differences;

    public long DifferenceCount { get; private set; }

    public async Task CompareAsync(Type type, IReadOnlyList<object> wanted)
    {
        var entity = db.Model.FindEntityType(type)!;
        var table = entity.GetTableName()!;
        var there = (await RowsAsync(type)).ToDictionary(row => KeyOf(entity, row));
        foreach (var row in wanted)
        {
            var key = KeyOf(entity, row);
            if (!there.Remove(key, out var standing))
            {
                Note(table, key, "missing");
                db.Add(row);
            }
            else if (Text(row) != Text(standing))
            {
                Note(table, key, $"stands as {Text(standing)}, the ledger says {Text(row)}");
                db.Entry(standing).CurrentValues.SetValues(row);
            }
        }
        foreach (var (key, row) in there)
        {
            Note(table, key, "left over");
            db.Remove(row);
        }
    }

    private async Task<List<object>> RowsAsync(Type type)
    {
        var set = typeof(LibraryDbContext).GetMethod(nameof(DbContext.Set), 1, [])!.MakeGenericMethod(type).Invoke(db, null)!;
        var rows = new List<object>();
        await foreach (var row in ((IQueryable<object>)set).AsAsyncEnumerable().WithCancellation(stop)) rows.Add(row);
        return rows;
    }

    private static string KeyOf(IEntityType entity, object row) => string.Join(
        '/', entity.FindPrimaryKey()!.Properties.Select(property => Convert.ToString(property.PropertyInfo!.GetValue(row), CultureInfo.InvariantCulture)));

    private static string Text(object row) => JsonSerializer.Serialize(row, row.GetType());

    private void Note(string table, string key, string what)
    {
        DifferenceCount++;
        if (_differences.Count < mostNamed) _differences.Add($"{table} {key}: {what}");
    }
}
