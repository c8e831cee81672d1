using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace LibraryDesk.Data.Sqlite;

/// <summary>Write-ahead log, synced at every commit: readers do not wait for writers, and what was acknowledged survives a power cut.</summary>
internal sealed class DurableWriteAheadLog : DbConnectionInterceptor
{
    private const string Pragmas = "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA busy_timeout=30000;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using var command = connection.CreateCommand();
        command.CommandText = Pragmas;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
