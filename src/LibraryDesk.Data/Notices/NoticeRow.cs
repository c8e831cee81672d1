namespace LibraryDesk.Data.Notices;

/// <summary>One thing a person was told of in the app.</summary>
public sealed class NoticeRow
{
    public long Id { get; set; }
    public Guid PersonId { get; set; }
    public NoticeKind Kind { get; set; }
    /// <summary>What it is about, such as "season:12:2:flowering"; with the person it is unique, so that nobody is told twice.</summary>
    public required string About { get; set; }
    public required string Heading { get; set; }
    public required string Text { get; set; }
    /// <summary>Where to go, an address of this desk beginning with a slash.</summary>
    public required string Address { get; set; }
    public DateTimeOffset At { get; set; }
    /// <summary>Null until it was read.</summary>
    public DateTimeOffset? ReadAt { get; set; }
}

/// <summary>A person's choice for one kind; without a row the desk's own default holds.</summary>
public sealed class NoticeChoiceRow
{
    public Guid PersonId { get; set; }
    public NoticeKind Kind { get; set; }
    public NoticeWay Way { get; set; }
}

/// <summary>Season reminders that went out, in whatever way, so that none goes out twice.</summary>
public sealed class SeasonReminderRow
{
    public long CaseId { get; set; }
    /// <summary>Stage of the guide that was to be looked for.</summary>
    public required string Stage { get; set; }
    /// <summary>Number of the look it was reckoned from.</summary>
    public int Look { get; set; }
    public DateTimeOffset At { get; set; }
}

/// <summary>The secret address of a person's calendar feed. Only its hash is kept; taking it back removes the row.</summary>
public sealed class CalendarLinkRow
{
    public Guid PersonId { get; set; }
    public required string KeyHash { get; set; }
    public DateTimeOffset MadeAt { get; set; }
}
