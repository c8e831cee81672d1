namespace LibraryDesk.Cli;

/// <summary>What a verb returns to the shell.</summary>
internal static class ExitCode
{
    /// <summary>Done as asked.</summary>
    public const int Done = 0;

    /// <summary>The input cannot be taken; the message says why, and nothing was printed or changed.</summary>
    public const int BadInput = 2;
}
