namespace LibraryDesk.TestServers;

/// <summary>Where the sources and what was built of them are.</summary>
public static class Repository
{
    public static string Root { get; } = FindRoot();

#if DEBUG
    public const string Configuration = "Debug";
#else
    public const string Configuration = "Release";
#endif

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "LibraryDesk.sln"))) return folder.FullName;
        }
        throw new InvalidOperationException("This runs from a checkout of the project.");
    }
}
