using System.Data;
using System.Data.Common;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>
/// The question "where from, what became of it, who has it" on a connection of its own, prepared once: planning it takes longer than
/// answering it for most packets. Straight to the database, since a popular packet has thousands of descendants and rows of three columns
/// need no model.
/// </summary>
internal sealed class TraceQuestion : IDisposable
{
    /// <summary>Marks a row as upstream; the others are downstream.</summary>
    public const int Up = 0;

    private readonly LibraryDbContext _db;
    private readonly Dictionary<CodeKind, DbCommand> _commands = [];

    private TraceQuestion(LibraryDbContext db) => _db = db;

    public static async Task<TraceQuestion> OpenAsync(IDbContextFactory<LibraryDbContext> factory, CancellationToken stop)
    {
        var db = await factory.CreateDbContextAsync(stop);
        await db.Database.OpenConnectionAsync(stop);
        return new(db);
    }

    public async Task<SeedTrace?> AskAsync(AnyCode code, CancellationToken stop)
    {
        if (!_commands.TryGetValue(code.Kind, out var command)) _commands[code.Kind] = command = await PrepareAsync(code.Kind, stop);
        command.Parameters[0].Value = code.Code;
        return await SeedTrace.ReadAsync(command, stop);
    }

    public void Dispose()
    {
        foreach (var command in _commands.Values) command.Dispose();
        _db.Dispose();
    }

    private async Task<DbCommand> PrepareAsync(CodeKind kind, CancellationToken stop)
    {
        var command = _db.Database.GetDbConnection().CreateCommand();
        command.CommandText = kind switch
        {
            CodeKind.Lot => From("SELECT id FROM lots WHERE code = @code AND NOT is_void"),
            CodeKind.Accession => From("SELECT id FROM accessions WHERE code = @code AND NOT is_void"),
            _ => From("SELECT id FROM packets WHERE code = @code AND standing <> 'Void'"),
        };
        var code = command.CreateParameter();
        code.ParameterName = "@code";
        code.DbType = DbType.String;
        code.Value = "";
        command.Parameters.Add(code);
        await command.PrepareAsync(stop);
        return command;
    }

    private static string From(string start) => $"""
        WITH RECURSIVE start(id) AS ({start}),
        up(id) AS (SELECT id FROM start UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id),
        down(id) AS (SELECT id FROM start UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
        SELECT 0, id, NULL FROM up UNION ALL SELECT 1, down.id, p.holder_id FROM down LEFT JOIN packets p ON p.id = down.id
        """;
}
