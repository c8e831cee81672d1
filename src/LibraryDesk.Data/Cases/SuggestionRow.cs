namespace LibraryDesk.Data.Cases;

/// <summary>What somebody who may see the case thinks it could be. Weighed by people, never multiplied into the odds.</summary>
public sealed class SuggestionRow
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    /// <summary>Null: the guest who owns the case.</summary>
    public Guid? ById { get; set; }
    public required string Taxon { get; set; }
    public string? FormId { get; set; }
    /// <summary>A variety that would fit; never more than that from looks.</summary>
    public string? VarietyName { get; set; }
    public required string Reason { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? WithdrawnAt { get; set; }
}
