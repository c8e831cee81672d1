namespace LibraryDesk.Data.Cases;

/// <summary>A look that the desk asked the owner for.</summary>
public sealed class LookRequestRow
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    public Guid ById { get; set; }
    /// <summary>Trait wanted; null when only a part or a photo is wanted.</summary>
    public string? TraitId { get; set; }
    /// <summary>Part wanted; null when any.</summary>
    public string? PartId { get; set; }
    public required string Message { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? MetAt { get; set; }
    public DateTimeOffset? WithdrawnAt { get; set; }
}
