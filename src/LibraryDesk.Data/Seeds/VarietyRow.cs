namespace LibraryDesk.Data.Seeds;

/// <summary>What the library means by a variety name.</summary>
public sealed class VarietyRow : IRevisioned
{
    public long Id { get; set; }
    public required string Name { get; set; }
    /// <summary>Upper case and trimmed, so that a name stands once.</summary>
    public required string NormalizedName { get; set; }
    public required string Species { get; set; }
    /// <summary>Other names, one a line.</summary>
    public string Synonyms { get; set; } = "";
    public BreedingStatus Breeding { get; set; }
    public string Description { get; set; } = "";
    /// <summary>What it should look like: trait and state ids of the crop guide, one "trait=state" a line.</summary>
    public string Traits { get; set; } = "";
    /// <summary>Where the name comes from; empty when not known.</summary>
    public string Source { get; set; } = "";
    public long Revision { get; set; }
}

/// <summary>How a variety was bred; an F1 hybrid is not saved true.</summary>
public enum BreedingStatus
{
    NotKnown,
    Landrace,
    OpenPollinated,
    F1Hybrid,
}
