namespace LibraryDesk.Cli.Identify;

/// <summary>Something wrong in a row of an answer file.</summary>
/// <param name="Row">Line of the file, the header being 1.</param>
internal readonly record struct RowFault(int Row, string Message)
{
    public override string ToString() => $"row {Row}: {Message}";
}
