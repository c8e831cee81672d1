namespace LibraryDesk.Desk.Seeds;

/// <summary>Recalls that were started in one go, such as of the packets of one packing; one that was started alone is a group of its own.</summary>
/// <param name="Parts">Its recalls, in the order of their codes.</param>
public sealed record RecallGroup(IReadOnlyList<RecallView> Parts)
{
    /// <summary>All of it as one: every packet once, closed when the last part is.</summary>
    public RecallView Together => Parts[0] with
    {
        Packets = [.. Parts.SelectMany(part => part.Packets).DistinctBy(packet => packet.Code)],
        ClosedOn = IsOpen ? null : Parts.Max(part => part.ClosedOn),
        ClosedWhy = IsOpen ? null : string.Join(" ", Parts.Select(part => part.ClosedWhy).Distinct()),
    };

    /// <summary>Parts that are closed.</summary>
    public int Closed => Parts.Count(part => part.ClosedOn is not null);

    public bool IsOpen => Closed < Parts.Count;

    // One act hands its numbers out in a row, and gives all of its recalls the same day and words.
    internal static IReadOnlyList<RecallGroup> Of(IEnumerable<RecallView> recalls)
    {
        var groups = new List<List<RecallView>>();
        foreach (var recall in recalls.OrderBy(recall => recall.HoldId))
        {
            if (groups.Count > 0 && groups[^1][^1] is var last && last.HoldId + 1 == recall.HoldId && last.Reason == recall.Reason && last.RecalledOn == recall.RecalledOn) groups[^1].Add(recall);
            else groups.Add([recall]);
        }

        return [.. groups.Select(parts => new RecallGroup(parts)).OrderByDescending(group => group.IsOpen).ThenByDescending(group => group.Parts[0].HoldId)];
    }
}
