using System.Data.Common;
using System.Globalization;
using LibraryDesk.Data;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>Lending and taking back by SQL written by hand for just that, on a connection that stays open: the least that keeps the same tables and the same chain.</summary>
internal sealed class HandWrittenLending : IAsyncDisposable
{
    private static readonly PersonId Librarian = new(new Guid("11111111-1111-1111-1111-111111111111"));
    private readonly LibraryDbContext _db;
    private readonly DbConnection _connection;
    private readonly Dictionary<string, DbCommand> _commands = [];

    private HandWrittenLending(LibraryDbContext db)
    {
        _db = db;
        _connection = db.Database.GetDbConnection();
    }

    private bool IsPostgres => _connection is NpgsqlConnection;

    public static async Task<HandWrittenLending> OpenAsync(BenchLibrary library)
    {
        var lending = new HandWrittenLending(library.Open());
        await lending._db.Database.OpenConnectionAsync();
        return lending;
    }

    public async Task<int> LendAndTakeBackAsync(Packet packet)
    {
        var on = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        var loan = default(LoanId);
        await ActAsync(async id =>
        {
            loan = new(id + 1);
            await ReadAsync("SELECT id, standing, lot_id FROM packets WHERE code = @a", packet.Code.ToString());
            await ReadAsync("WITH RECURSIVE up(id) AS (SELECT @a UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id) SELECT h.id FROM holds h WHERE h.node_id IN (SELECT id FROM up)", packet.Id.Value);
            await WriteAsync("INSERT INTO loans (id, packet_id, borrower_id, lent_on, is_void) VALUES (@a, @b, @c, @d, @e)", loan.Value, packet.Id.Value, Librarian.Value, on, false);
            await WriteAsync("UPDATE packets SET standing = 'Lent', holder_id = @a, loan_id = @b WHERE id = @c", Librarian.Value, loan.Value, packet.Id.Value);
            return new Lent(loan, packet.Id, Librarian, on, null, null);
        });
        await ActAsync(async _ =>
        {
            await ReadAsync("SELECT l.packet_id, p.standing FROM loans l JOIN packets p ON p.id = l.packet_id WHERE l.id = @a", loan.Value);
            await WriteAsync("UPDATE loans SET ending = 'BroughtBack', ended_on = @a WHERE id = @b", on, loan.Value);
            await WriteAsync("UPDATE packets SET standing = 'OnShelf', holder_id = NULL, loan_id = NULL WHERE id = @a", packet.Id.Value);
            return new LoanEnded(loan, packet.Id, LoanEnding.BroughtBack, on, Quantity.OfSeeds(0));
        });
        return 2;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var command in _commands.Values) await command.DisposeAsync();
        await _db.DisposeAsync();
    }

    private async Task ActAsync(Func<long, Task<SeedAct>> work)
    {
        await WriteAsync(IsPostgres ? "BEGIN" : "BEGIN IMMEDIATE");
        if (IsPostgres) await ReadAsync("SELECT pg_advisory_xact_lock(1279544389)");
        var head = await ReadAsync("SELECT height, hash, last_seed_id FROM ledger_head WHERE id = 1");
        var lastId = Convert.ToInt64(head[2], CultureInfo.InvariantCulture);
        var act = await work(lastId);
        if (!EntryHash.TryParse((string)head[1], out var hash)) throw new InvalidOperationException("The head is damaged.");
        var entry = Chain.Append(new(Convert.ToInt64(head[0], CultureInfo.InvariantCulture), hash), TimeProvider.System.GetUtcNow(), Librarian, act).ToRow();
        await WriteAsync(
            "INSERT INTO ledger_entries (sequence, at, actor_id, kind, subjects, payload, previous_hash, hash) VALUES (@a, @b, @c, @d, @e, @f, @g, @h)",
            entry.Sequence, IsPostgres ? entry.At : entry.At.UtcTicks, entry.ActorId, entry.Kind, entry.Subjects, entry.Payload, entry.PreviousHash, entry.Hash);
        foreach (var subject in act.Subjects) await WriteAsync("INSERT INTO ledger_subjects (node_id, sequence) VALUES (@a, @b)", subject.Value, entry.Sequence);
        await WriteAsync("UPDATE ledger_head SET height = @a, hash = @b, last_seed_id = @c WHERE id = 1", entry.Sequence, entry.Hash, act is Lent ? lastId + 1 : lastId);
        await WriteAsync("COMMIT");
    }

    private async Task<object[]> ReadAsync(string sql, params object[] values)
    {
        await using var rows = await Command(sql, values).ExecuteReaderAsync();
        var first = Array.Empty<object>();
        while (await rows.ReadAsync())
        {
            if (first.Length > 0) continue;
            first = new object[rows.FieldCount];
            rows.GetValues(first);
        }

        return first;
    }

    private Task<int> WriteAsync(string sql, params object[] values) => Command(sql, values).ExecuteNonQueryAsync();

    private DbCommand Command(string sql, object[] values)
    {
        if (!_commands.TryGetValue(sql, out var command))
        {
            command = _connection.CreateCommand();
            command.CommandText = sql;
            for (var place = 0; place < values.Length; place++)
            {
                var parameter = command.CreateParameter();
                parameter.ParameterName = $"@{(char)('a' + place)}";
                parameter.Value = values[place];
                command.Parameters.Add(parameter);
            }

            command.Prepare();
            _commands[sql] = command;
        }

        for (var place = 0; place < values.Length; place++) command.Parameters[place].Value = values[place];
        return command;
    }
}
