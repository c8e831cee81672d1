using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Seeds;
using Microsoft.Data.Sqlite;

namespace LibraryDesk.Desk.Seeds.Ledger.Rebuild;

/// <summary>
/// A file for a while, in which a rebuild keeps the rows that the ledger asks for: the library may be larger than memory. SQLite makes it in
/// the system's folder for such files and it is gone when closed, or when the process dies.
/// </summary>
internal sealed class RebuildScratch : ISeedRecords, IDisposable
{
    private readonly SqliteConnection _file = new("Data Source=;Pooling=False");
    private readonly SqliteCommand _find;
    private readonly SqliteCommand _put;
    private readonly SqliteCommand _note;

    public RebuildScratch()
    {
        _file.Open();
        Execute("""
            PRAGMA journal_mode=OFF; PRAGMA synchronous=OFF; PRAGMA cache_size=-65536;
            CREATE TABLE wanted (t INTEGER, a INTEGER, b INTEGER, text TEXT, PRIMARY KEY (t, a, b)) WITHOUT ROWID;
            CREATE TABLE repairs (n INTEGER PRIMARY KEY, t INTEGER, act INTEGER, text TEXT);
            BEGIN;
            """);
        _find = Command("SELECT text FROM wanted WHERE t=$t AND a=$a AND b=$b", "$t", "$a", "$b");
        _put = Command("INSERT OR REPLACE INTO wanted VALUES ($t, $a, $b, $text)", "$t", "$a", "$b", "$text");
        _note = Command("INSERT INTO repairs (t, act, text) VALUES ($t, $act, $text)", "$t", "$act", "$text");
    }

    /// <summary>Rows kept.</summary>
    public long Count
    {
        get
        {
            using var count = Command("SELECT count(*) FROM wanted");
            return (long)count.ExecuteScalar()!;
        }
    }

    public void Put(object row)
    {
        var table = DerivedTable.Of(row.GetType());
        var key = table.KeyOf(row);
        Run(_put, table.Number, key.First, key.Second, DerivedTable.TextOf(row));
    }

    /// <summary>The rows of one table, in the order of their keys.</summary>
    public IEnumerable<(RowKey Key, string Text)> Wanted(DerivedTable table)
    {
        using var read = Command("SELECT a, b, text FROM wanted WHERE t=$t ORDER BY a, b", "$t");
        read.Parameters[0].Value = table.Number;
        using var rows = read.ExecuteReader();
        while (rows.Read()) yield return (new(rows.GetInt64(0), rows.GetInt64(1)), rows.GetString(2));
    }

    /// <summary>Takes down what is to be done to a row of a table.</summary>
    public void Note(DerivedTable table, EntityState act, string text) => Run(_note, table.Number, (int)act, text);

    /// <summary>What was taken down, in order.</summary>
    public IEnumerable<(object Row, EntityState Act)> Repairs()
    {
        using var read = Command("SELECT t, act, text FROM repairs ORDER BY n");
        using var rows = read.ExecuteReader();
        while (rows.Read()) yield return (DerivedTable.All[rows.GetInt32(0) - 1].Read(rows.GetString(2)), (EntityState)rows.GetInt32(1));
    }

    public Accession? Find(AccessionId id) => Find<AccessionRow>(id.Value)?.ToRecord();

    public Lot? Find(LotId id) => Find<LotRow>(id.Value)?.ToRecord();

    public Packet? Find(PacketId id) => Find<PacketRow>(id.Value)?.ToRecord();

    public GrowOut? Find(GrowOutId id) => Find<GrowOutRow>(id.Value)?.ToRecord();

    public Loan? Find(LoanId id) => Find<LoanRow>(id.Value)?.ToRecord();

    public SeedRequest? Find(RequestId id) => Find<SeedRequestRow>(id.Value)?.ToRecord();

    public Hold? Find(HoldId id) => Find<HoldRow>(id.Value)?.ToRecord();

    public NameClaim? Find(ClaimId id) => Find<NameClaimRow>(id.Value)?.ToRecord();

    public GerminationTest? Find(TestId id) => Find<GerminationTestRow>(id.Value)?.ToRecord();

    public SeedTransfer? FindTransfer(long entry) => Find<SeedTransferRow>(entry)?.ToRecord();

    public void Dispose()
    {
        _find.Dispose();
        _put.Dispose();
        _note.Dispose();
        _file.Dispose();
    }

    private TRow? Find<TRow>(long id)
        where TRow : class
    {
        var table = DerivedTable.Of(typeof(TRow));
        _find.Parameters[0].Value = table.Number;
        _find.Parameters[1].Value = id;
        _find.Parameters[2].Value = 0L;
        return _find.ExecuteScalar() is string text ? (TRow)table.Read(text) : null;
    }

    private SqliteCommand Command(string sql, params string[] parameters)
    {
        var command = _file.CreateCommand();
        command.CommandText = sql;
        foreach (var parameter in parameters) command.Parameters.Add(new SqliteParameter { ParameterName = parameter });
        return command;
    }

    private static void Run(SqliteCommand command, params object[] values)
    {
        for (var place = 0; place < values.Length; place++) command.Parameters[place].Value = values[place];
        command.ExecuteNonQuery();
    }

    private void Execute(string sql)
    {
        using var command = Command(sql);
        command.ExecuteNonQuery();
    }
}
