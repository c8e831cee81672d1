namespace LibraryDesk.Lineage.Seeds;

/// <summary>Seed that left for another library, which must be told of a recall.</summary>
/// <param name="Entry">The ledger entry of the transfer.</param>
/// <param name="Node">The lot or packet.</param>
/// <param name="Seed">How much.</param>
/// <param name="Library">The other library, as it calls itself.</param>
/// <param name="SentOn">The day.</param>
/// <param name="IsVoid">True when its entry was undone.</param>
public sealed record SeedTransfer(long Entry, NodeId Node, Quantity Seed, string Library, DateOnly SentOn, bool IsVoid = false);
