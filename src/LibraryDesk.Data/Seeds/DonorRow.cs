namespace LibraryDesk.Data.Seeds;

/// <summary>Who gave seed, where it is not somebody with a sign-in. The ledger knows the id alone, so the rest can be erased.</summary>
public sealed class DonorRow : IRevisioned
{
    public Guid Id { get; set; }
    /// <summary>Empty after erasure.</summary>
    public required string Name { get; set; }
    /// <summary>How to reach them; null when not told, or erased.</summary>
    public string? Contact { get; set; }
    public string? Note { get; set; }
    public DateTimeOffset? ErasedAt { get; set; }
    public long Revision { get; set; }
}
