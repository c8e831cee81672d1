namespace LibraryDesk.Data.Guides;

/// <summary>The next version of a guide while librarians work on it: a published version and the changes to it. A guide has at most one.</summary>
public sealed class GuideDraftRow : IRevisioned
{
    public int Id { get; set; }
    public required string GuideId { get; set; }
    /// <summary>The published version that the changes are made to.</summary>
    public required string BaseVersion { get; set; }
    /// <summary>True when the next version is to carry counts of determined plants.</summary>
    public bool Learns { get; set; }
    public DateTimeOffset StartedAt { get; set; }
    public DateTimeOffset ChangedAt { get; set; }
    /// <summary>The librarian who changed it last.</summary>
    public Guid? ChangedById { get; set; }
    public long Revision { get; set; }
}

/// <summary>One change to a draft. Undoing keeps the row until another change is made.</summary>
public sealed class GuideEditRow
{
    public long Id { get; set; }
    public int DraftId { get; set; }
    /// <summary>1, 2, ... in the order the changes are made.</summary>
    public int Number { get; set; }
    /// <summary>The change as JSON.</summary>
    public required string Json { get; set; }
    public Guid? ById { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? UndoneAt { get; set; }
}

/// <summary>A re-run of all determined cases by the current version and by a draft.</summary>
public sealed class GuideRerunRow
{
    public long Id { get; set; }
    public int DraftId { get; set; }
    /// <summary>SHA-256 of the draft, the current version and the cases, hex: says whether it still holds.</summary>
    public required string Fingerprint { get; set; }
    public required string BeforeVersion { get; set; }
    /// <summary>Cases re-run so far.</summary>
    public int Done { get; set; }
    public int Of { get; set; }
    public DateTimeOffset StartedAt { get; set; }
    /// <summary>The last sign of life; long ago while unfinished means that the server was stopped.</summary>
    public DateTimeOffset MovedAt { get; set; }
    public DateTimeOffset? FinishedAt { get; set; }
    /// <summary>Null until finished.</summary>
    public string? ResultJson { get; set; }
}
