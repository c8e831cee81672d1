namespace LibraryDesk.Web.Start;

/// <summary>
/// Marks the demo's own database file as unfinished while the demo is loaded into it. A start that finds the mark of a killed one begins
/// anew; the mark of a start that still runs is locked, and is left alone.
/// </summary>
public sealed class DemoDraft : IDisposable
{
    private readonly string _mark;
    private FileStream? _held;

    private DemoDraft(string mark, FileStream? held)
    {
        _mark = mark;
        _held = held;
    }

    /// <summary>Removes what a killed start left of <paramref name="database"/>, and marks the file when it is to be made now.</summary>
    public static DemoDraft Begin(string database)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(database);
        var mark = database + ".loading";
        if (Path.GetDirectoryName(mark) is { Length: > 0 } folder) Directory.CreateDirectory(folder);
        if (File.Exists(database) && !File.Exists(mark)) return new DemoDraft(mark, null);
        FileStream held;
        try
        {
            held = new FileStream(mark, FileMode.OpenOrCreate, FileAccess.Write, FileShare.None);
        }
        catch (IOException)
        {
            return new DemoDraft(mark, null);
        }
        foreach (var ending in (string[])["", "-wal", "-shm"]) File.Delete(database + ending);
        return new DemoDraft(mark, held);
    }

    /// <summary>The demo is loaded.</summary>
    public void Finish()
    {
        if (_held is null) return;
        _held.Dispose();
        _held = null;
        File.Delete(_mark);
    }

    public void Dispose() => _held?.Dispose();
}
