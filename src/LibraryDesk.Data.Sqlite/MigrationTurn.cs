namespace LibraryDesk.Data.Sqlite;

/// <summary>A file held open by one process at a time; the operating system lets go of it when that process dies.</summary>
internal sealed class MigrationTurn : IAsyncDisposable
{
    private readonly FileStream _file;

    private MigrationTurn(FileStream file) => _file = file;

    public static async Task<MigrationTurn> TakeAsync(string path, CancellationToken stop)
    {
        while (true)
        {
            try
            {
                return new MigrationTurn(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
            }
            catch (IOException) when (!stop.IsCancellationRequested)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(100), stop);
            }
        }
    }

    public ValueTask DisposeAsync() => _file.DisposeAsync();
}
