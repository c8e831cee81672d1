namespace LibraryDesk.Data.People;

/// <summary>An invitation to join, as member, volunteer or librarian. Only a hash of its code is kept.</summary>
public sealed class InvitationRow
{
    public Guid Id { get; set; }
    public required string Email { get; set; }
    public required string Role { get; set; }
    public required string CodeHash { get; set; }
    public Guid InvitedById { get; set; }
    public DateTimeOffset CreatedAt { get; set; }
    public DateTimeOffset ExpiresAt { get; set; }
    /// <summary>Null while it can still be used.</summary>
    public DateTimeOffset? UsedAt { get; set; }
    /// <summary>Null unless a librarian took it back.</summary>
    public DateTimeOffset? WithdrawnAt { get; set; }
}
