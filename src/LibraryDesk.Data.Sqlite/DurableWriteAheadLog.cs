using System.Data.Common;
using System.Runtime.CompilerServices;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace LibraryDesk.Data.Sqlite;

/// <summary>Write-ahead log, synced at every commit: readers do not wait for writers, and what was acknowledged survives a power cut.</summary>
internal sealed class DurableWriteAheadLog : DbConnectionInterceptor
{
    private const string Pragmas = "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA busy_timeout=30000;";

    // A handle from the pool keeps what it was told, so it is told once: an act opens several.
    private static readonly ConditionalWeakTable<object, object> Told = [];

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        if (IsTold(connection)) return;
        using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        command.ExecuteNonQuery();
        Keep(connection);
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        if (IsTold(connection)) return;
        await using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        await command.ExecuteNonQueryAsync(cancellationToken);
        Keep(connection);
    }

    private static bool IsTold(DbConnection connection) => connection is SqliteConnection { Handle: { } handle } && Told.TryGetValue(handle, out _);

    private static void Keep(DbConnection connection)
    {
        if (connection is SqliteConnection { Handle: { } handle }) Told.TryAdd(handle, Told);
    }
}
