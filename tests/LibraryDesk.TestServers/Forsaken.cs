using System.Diagnostics;
using System.Globalization;

namespace LibraryDesk.TestServers;

/// <summary>
/// Folders of throw-away servers carry the number of the process that made them. One that was killed cannot clean up behind itself, so
/// the next one does. A number that is in use is left alone, even where another process has it by now.
/// </summary>
public static class Forsaken
{
    private const string Prefix = "ldpg";

    /// <summary>Makes a folder that belongs to this process.</summary>
    public static string NewFolder() => Directory.CreateTempSubdirectory(string.Create(CultureInfo.InvariantCulture, $"{Prefix}{Environment.ProcessId}-")).FullName;

    /// <summary>Takes away the folders of processes that are gone.</summary>
    /// <param name="stopServer">Stops the server whose data lie in a folder; called where one may still run.</param>
    public static void ClearAway(Action<string> stopServer)
    {
        ArgumentNullException.ThrowIfNull(stopServer);
        foreach (var folder in Directory.GetDirectories(Path.GetTempPath(), Prefix + "*").Where(IsForsaken))
        {
            try
            {
                if (ServerRuns(folder)) stopServer(folder);
                Directory.Delete(folder, recursive: true);
            }
            catch (Exception broken) when (broken is IOException or UnauthorizedAccessException or InvalidOperationException)
            {
                // Somebody else's, or another run is clearing it away at this moment.
            }
        }
    }

    // The number in the file may be another's by now: a server works in its data folder, so that tells them apart.
    private static bool ServerRuns(string folder)
    {
        var data = Path.Combine(folder, "d");
        var noted = Path.Combine(data, "postmaster.pid");
        return File.Exists(noted) && File.ReadLines(noted).FirstOrDefault() is { } number && new DirectoryInfo($"/proc/{number.Trim()}/cwd").LinkTarget == data;
    }

    /// <summary>True when the process that made the folder is gone; false for a folder that names none.</summary>
    public static bool IsForsaken(string folder)
    {
        var name = Path.GetFileName(folder);
        if (!name.StartsWith(Prefix, StringComparison.Ordinal) || name.IndexOf('-', StringComparison.Ordinal) is var end && end < 0) return false;
        if (!int.TryParse(name.AsSpan(Prefix.Length, end - Prefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var maker)) return false;
        try
        {
            using var alive = Process.GetProcessById(maker);
            return false;
        }
        catch (ArgumentException)
        {
            return true;
        }
    }
}
