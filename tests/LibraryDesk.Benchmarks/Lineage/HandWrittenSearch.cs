using System.Data.Common;
using System.Globalization;
using LibraryDesk.Data;
using LibraryDesk.Desk.Seeds.Search;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>
/// The same searches in SQL written by hand, on a connection that stays open, each statement prepared once: the words in use for those
/// typed, the newest lots that all of them lead to with their packets on the shelf, and the accessions of a donor. It does not rank.
/// </summary>
internal sealed class HandWrittenSearch : IAsyncDisposable
{
    private const int MostWords = 10;
    private const int MostLookedAt = 40;
    private const int MostNear = 5;
    private readonly LibraryDbContext _db;
    private readonly DbConnection _connection;
    private readonly Dictionary<string, DbCommand> _commands = [];

    private HandWrittenSearch(LibraryDbContext db)
    {
        _db = db;
        _connection = db.Database.GetDbConnection();
    }

    public static async Task<HandWrittenSearch> OpenAsync(BenchLibrary library)
    {
        var search = new HandWrittenSearch(library.Open());
        await search._db.Database.OpenConnectionAsync();
        return search;
    }

    /// <summary>Packets or lots whose codes begin so; how many.</summary>
    public async Task<int> ByCodeAsync(string code, int most)
    {
        var found = 0;
        foreach (var table in (string[])["packets", "lots", "accessions"]) found += (await ReadAsync($"SELECT id, code FROM {table} WHERE code >= @a AND code < @b ORDER BY code LIMIT {most}", code, code + "~")).Count;
        return found;
    }

    /// <summary>Lots and accessions that all words and the season lead to; how many.</summary>
    public async Task<int> ByWordsAsync(IEnumerable<string> typed, int? year, int most)
    {
        var words = new List<IReadOnlyList<object>>();
        foreach (var word in typed) words.Add(await InUseAsync(word));
        words.RemoveAll(word => word.Count == 0);
        if (words.Count == 0 && year is null) return 0;
        string Refs(string kind)
        {
            var at = 0;
            return string.Join(" INTERSECT ", words.Select(word => $"SELECT ref FROM search_postings WHERE kind = '{kind}' AND word IN ({string.Join(", ", word.Select(_ => Name(at++)))})"));
        }

        object[] values = [.. words.SelectMany(word => word)];
        var named = words.Count > 0 ? $"s.name_id IN ({Refs("N")})" : "true";
        var season = year is { } given ? string.Create(CultureInfo.InvariantCulture, $" AND s.year = {given}") : "";
        var lots = await ReadAsync(
            $"""
            WITH hits(id, name_id) AS (SELECT s.lot_id, s.name_id FROM search_lots s WHERE {named}{season} ORDER BY s.lot_id DESC LIMIT {most})
            SELECT l.code, n.display, (SELECT count(*) FROM packets p WHERE p.lot_id = l.id AND p.standing = 'OnShelf') FROM hits JOIN lots l ON l.id = hits.id JOIN search_names n ON n.id = hits.name_id
            """,
            values);
        var donors = words.Count > 0
            ? await ReadAsync($"SELECT a.code, d.name FROM accessions a LEFT JOIN donors d ON d.id = a.donor_id WHERE a.id IN ({Refs("D")}) ORDER BY a.id DESC LIMIT {most}", values)
            : [];
        return lots.Count + donors.Count;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var command in _commands.Values) await command.DisposeAsync();
        await _db.DisposeAsync();
    }

    private async Task<IReadOnlyList<object>> InUseAsync(string typed)
    {
        var longer = await ReadAsync($"SELECT DISTINCT word FROM search_postings WHERE word >= @a AND word < @b ORDER BY word LIMIT {MostLookedAt}", typed, typed + '\uffff');
        if (longer.Count > 0) return [.. longer.Select(row => row[0]).OrderBy(word => ((string)word).Length).ThenBy(word => (string)word, StringComparer.Ordinal).Take(MostWords)];
        var trigrams = SearchText.Trigrams(typed);
        var looked = await ReadAsync(
            $"SELECT word FROM search_trigrams WHERE trigram IN ({string.Join(", ", trigrams.Select((_, at) => Name(at)))}) GROUP BY word ORDER BY count(*) DESC, word LIMIT {MostLookedAt}", [.. trigrams]);
        var most = SearchText.Forgiven(typed);
        return [.. looked.Select(row => (string)row[0]).Select(word => (Word: word, Slips: SearchText.Slips(typed, word, most))).Where(word => word.Slips <= most).OrderBy(word => word.Slips).ThenBy(word => word.Word, StringComparer.Ordinal).Take(MostNear).Select(word => word.Word)];
    }

    private async Task<List<object[]>> ReadAsync(string sql, params object[] values)
    {
        if (!_commands.TryGetValue(sql, out var command))
        {
            command = _connection.CreateCommand();
            command.CommandText = sql;
            for (var at = 0; at < values.Length; at++)
            {
                var parameter = command.CreateParameter();
                parameter.ParameterName = Name(at);
                parameter.Value = values[at];
                command.Parameters.Add(parameter);
            }

            await command.PrepareAsync();
            _commands[sql] = command;
        }

        for (var at = 0; at < values.Length; at++) command.Parameters[at].Value = values[at];
        var found = new List<object[]>();
        await using var rows = await command.ExecuteReaderAsync();
        while (await rows.ReadAsync())
        {
            var row = new object[rows.FieldCount];
            rows.GetValues(row);
            found.Add(row);
        }

        return found;
    }

    private static string Name(int at) => $"@{(at < 26 ? ((char)('a' + at)).ToString() : "z" + at.ToString(CultureInfo.InvariantCulture))}";
}
