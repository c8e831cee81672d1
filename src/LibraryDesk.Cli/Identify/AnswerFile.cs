using CsvHelper;
using LibraryDesk.Identification.Answers;

namespace LibraryDesk.Cli.Identify;

/// <summary>An answer file that can be read from the start more than once. Standard input is set down in a temporary file first.</summary>
internal sealed class AnswerFile : IAsyncDisposable
{
    private static readonly CsvReaderOptions Options = new()
    {
        Separator = ',',
        TrimWhitespace = true,
        TrackLineNumbers = true,
        PoolStrings = true,
        MaxRecordSize = 1 << 20,
    };

    private const int BatchSize = 64;

    private readonly string _path;
    private readonly bool _isTemporary;

    private AnswerFile(string path, bool isTemporary)
    {
        _path = path;
        _isTemporary = isTemporary;
    }

    /// <summary>True once a check found a case whose rows do not stand together.</summary>
    public bool IsScattered { get; set; }

    /// <summary>Opens a file, or standard input for <c>-</c>; null when there is no such file.</summary>
    public static async Task<AnswerFile?> OpenAsync(string path, CancellationToken stop)
    {
        if (path != "-") return File.Exists(path) ? new AnswerFile(path, isTemporary: false) : null;
        var temporary = Path.GetTempFileName();
        await using var file = File.Create(temporary);
        await using var input = Console.OpenStandardInput();
        await input.CopyToAsync(file, stop);
        return new AnswerFile(temporary, isTemporary: true);
    }

    public ValueTask DisposeAsync()
    {
        if (_isTemporary) File.Delete(_path);
        return ValueTask.CompletedTask;
    }

    /// <summary>Reads all rows; what cannot be read is told to <paramref name="fault"/> and left out.</summary>
    public IEnumerable<AnswerRow> Rows(Action<RowFault> fault)
    {
        using var reader = CsvReader.FromFile(_path, Options);
        if (Try(reader, ReadHeader, fault) is not true)
        {
            fault(new RowFault(1, "the file is empty; its first row must be case,trait,state and optionally sure,person,look"));
            yield break;
        }

        var columns = AnswerColumns.Of([.. reader.Headers], fault);
        if (columns is null) yield break;
        while (Try(reader, static r => r.Read(), fault) is true)
        {
            if (columns.Read(reader, fault) is { } row) yield return row;
        }
    }

    private static bool ReadHeader(CsvReader reader)
    {
        reader.ReadHeader();
        return reader.Headers.Count > 0;
    }

    /// <summary>One step of reading; null after text that is no CSV was told.</summary>
    private static bool? Try(CsvReader reader, Func<CsvReader, bool> step, Action<RowFault> fault)
    {
        try
        {
            return step(reader);
        }
        catch (CsvFormatException e)
        {
            fault(new RowFault((int)Math.Max(1, e.LineNumber), e.Message));
            return null;
        }
    }

    /// <summary>The cases, so many together as are worth a task of their own.</summary>
    public IEnumerable<AnswerBatch> Batches()
    {
        var faults = new List<RowFault>();
        var cases = new List<AnswerCase>(BatchSize);
        foreach (var one in Cases(faults.Add))
        {
            cases.Add(one);
            if (cases.Count < BatchSize) continue;
            yield return new AnswerBatch(cases, [.. faults]);
            cases = new List<AnswerCase>(BatchSize);
            faults.Clear();
        }

        if (cases.Count + faults.Count > 0) yield return new AnswerBatch(cases, faults);
    }

    /// <summary>Cases in order of their first row. Only cases whose rows stand together are read without holding the whole file.</summary>
    public IEnumerable<AnswerCase> Cases(Action<RowFault> fault)
    {
        if (IsScattered)
        {
            foreach (var group in Rows(fault).GroupBy(r => r.Case)) yield return new AnswerCase(group.Key, [.. group]);
            yield break;
        }

        AnswerCase? open = null;
        foreach (var row in Rows(fault))
        {
            if (open is not null && open.Case != row.Case)
            {
                yield return open;
                open = null;
            }

            open ??= new AnswerCase(row.Case, []);
            open.Rows.Add(row);
        }

        if (open is not null) yield return open;
    }

    /// <summary>Where each column stands.</summary>
    private sealed class AnswerColumns
    {
        private static readonly string[] Needed = ["case", "trait", "state"];
        private static readonly string[] Known = ["case", "trait", "state", "sure", "person", "look"];

        private readonly int[] _at = new int[Known.Length];
        private int _count;
        private int _last;

        public static AnswerColumns? Of(string[] header, Action<RowFault> fault)
        {
            var columns = new AnswerColumns { _count = header.Length };
            for (var i = 0; i < Known.Length; i++) columns._at[i] = Array.FindIndex(header, h => h.Equals(Known[i], StringComparison.OrdinalIgnoreCase));
            var missing = Needed.Where(n => columns._at[Array.IndexOf(Known, n)] < 0).ToList();
            var unknown = header.Where(h => !Known.Contains(h, StringComparer.OrdinalIgnoreCase)).ToList();
            if (missing.Count > 0) fault(new RowFault(1, $"no column {string.Join(", ", missing)}; the first row must be case,trait,state and optionally sure,person,look"));
            if (unknown.Count > 0) fault(new RowFault(1, $"unknown column {string.Join(", ", unknown)}; known are case,trait,state,sure,person,look"));
            if (header.Distinct(StringComparer.OrdinalIgnoreCase).Count() < header.Length) fault(new RowFault(1, "a column is named twice"));
            columns._last = columns._at[..Needed.Length].Max();
            return missing.Count + unknown.Count == 0 ? columns : null;
        }

        public AnswerRow? Read(CsvReader reader, Action<RowFault> fault)
        {
            var row = (int)reader.LineNumber;
            if (reader.FieldCount > _count || reader.FieldCount <= _last)
            {
                fault(new RowFault(row, $"has {reader.FieldCount} fields where the first row has {_count}"));
                return null;
            }

            var name = Field(reader, 0);
            if (name.Length == 0)
            {
                fault(new RowFault(row, "names no case"));
                return null;
            }

            Sureness? sure = Field(reader, 3) switch
            {
                "" or "sure" => Sureness.Sure,
                "fairly" => Sureness.Fairly,
                "faint" => Sureness.Faint,
                _ => null,
            };
            if (sure is null)
            {
                fault(new RowFault(row, $"sure is \"{Field(reader, 3)}\"; it must be sure, fairly or faint"));
                return null;
            }

            return new AnswerRow(row, name, Field(reader, 1), Field(reader, 2), sure.Value, Field(reader, 4), Field(reader, 5));
        }

        private string Field(CsvReader reader, int column) => _at[column] < 0 || _at[column] >= reader.FieldCount ? "" : reader.GetString(_at[column]);
    }
}
