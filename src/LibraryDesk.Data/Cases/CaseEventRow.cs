namespace LibraryDesk.Data.Cases;

/// <summary>One line of a case's history, written with the change it tells of.</summary>
public sealed class CaseEventRow
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    /// <summary>Stable word: filed, look-added, answer-taken-back, opinion-sealed, determined, reopened, ...</summary>
    public required string Kind { get; set; }
    /// <summary>Null: the guest, or the desk itself.</summary>
    public Guid? ById { get; set; }
    /// <summary>What the kind needs to be told in words; null when the kind says it all.</summary>
    public string? Detail { get; set; }
    public DateTimeOffset At { get; set; }
}
