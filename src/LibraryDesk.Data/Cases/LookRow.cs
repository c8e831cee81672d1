namespace LibraryDesk.Data.Cases;

/// <summary>One dated set of trait answers, measurements and photos of the plant, with the parts it carried.</summary>
public sealed class LookRow : IRevisioned
{
    public long Id { get; set; }
    public long CaseId { get; set; }
    /// <summary>1, 2, ... within the case.</summary>
    public int Number { get; set; }
    public DateOnly Date { get; set; }
    /// <summary>Part ids of the guide (leaves, flowers, ...) that the plant carried, joined by commas.</summary>
    public string Parts { get; set; } = "";
    /// <summary>Null: the guest who owns the case.</summary>
    public Guid? ById { get; set; }
    public string? Note { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public long Revision { get; set; }
}
