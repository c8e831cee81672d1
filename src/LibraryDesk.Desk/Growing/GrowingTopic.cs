namespace LibraryDesk.Desk.Growing;

/// <summary>What is known of one topic for one taxon, all sources side by side.</summary>
/// <param name="Id">Topic id, such as "isolation_share_m".</param>
/// <param name="Name">The topic in plain words.</param>
/// <param name="Group">Name of the group it is shown in, such as "Keeping it apart".</param>
/// <param name="From">Whose rows these are: the species asked for, its genus, or "all".</param>
/// <param name="Facts">At least one fact, in the order of the file.</param>
public sealed record GrowingTopic(string Id, string Name, string Group, string From, IReadOnlyList<GrowingFact> Facts);
