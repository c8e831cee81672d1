namespace LibraryDesk.Identification.Guides;

/// <summary>The line of each entry of a guide file, list by list in file order.</summary>
internal sealed class GuideLines
{
    public List<int> Sources { get; } = [];

    public List<int> Stages { get; } = [];

    public List<int> Parts { get; } = [];

    public List<int> Traits { get; } = [];

    public List<List<int>> States { get; } = [];

    public List<int> Cautions { get; } = [];

    public List<int> Candidates { get; } = [];

    public List<List<int>> Forms { get; } = [];

    public List<int> Cells { get; } = [];

    public List<int> Counts { get; } = [];

    public List<int> Answers { get; } = [];
}
