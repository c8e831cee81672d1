namespace LibraryDesk.Data.Mail;

/// <summary>A letter waiting to be sent. It is written in the transaction that causes it, so none is lost when the server stops.</summary>
public sealed class OutgoingMailRow
{
    public long Id { get; set; }
    public required string To { get; set; }
    public required string Subject { get; set; }
    /// <summary>Plain text.</summary>
    public required string Body { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    /// <summary>Not sent before this instant; set later after a failed try.</summary>
    public DateTimeOffset DueAt { get; set; }
    public DateTimeOffset? SentAt { get; set; }
    public int Tries { get; set; }
}
