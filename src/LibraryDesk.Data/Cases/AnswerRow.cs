namespace LibraryDesk.Data.Cases;

/// <summary>One person's answer to one trait at one look. Taking it back keeps the row and sets <see cref="TakenBackAt"/>.</summary>
public sealed class AnswerRow
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    public long LookId { get; set; }
    public required string TraitId { get; set; }
    public AnswerKind Kind { get; set; }
    /// <summary>State ids joined by '|'; empty unless <see cref="Kind"/> is States.</summary>
    public string States { get; set; } = "";
    /// <summary>In the trait's unit; null unless a measure.</summary>
    public double? Low { get; set; }
    /// <summary>Equal to <see cref="Low"/> for a single number.</summary>
    public double? High { get; set; }
    /// <summary>sure, fairly or faint.</summary>
    public string Sureness { get; set; } = "sure";
    /// <summary>Null: the guest who owns the case.</summary>
    public Guid? PersonId { get; set; }
    /// <summary>True when a volunteer or librarian scored it from the photos or the plant.</summary>
    public bool ByDesk { get; set; }
    /// <summary>The answer this one contests; null for a first answer.</summary>
    public long? ContestsAnswerId { get; set; }
    public DateTimeOffset At { get; set; }
    public DateTimeOffset? TakenBackAt { get; set; }
}
