namespace LibraryDesk.Desk.People;

/// <summary>
/// Who asks for an act. Every act checks its actor itself; hidden buttons and page attributes are courtesy only.
/// </summary>
/// <param name="UserId">The signed-in person; null for visitors and guests.</param>
/// <param name="Role">Highest role of <see cref="DeskRoles"/>; null when signed out.</param>
/// <param name="GuestKey">The secret from a guest's link, as it came; null without one. It opens that guest's case only.</param>
public sealed record Actor(Guid? UserId, string? Role, string? GuestKey = null)
{
    /// <summary>Somebody not signed in and without a link.</summary>
    public static Actor Visitor { get; } = new(null, null);

    /// <summary>The command line and timed jobs of the server itself.</summary>
    public static Actor System { get; } = new(Guid.Empty, DeskRoles.Librarian);

    public static Actor Guest(string key) => new(null, null, key);

    public static Actor Member(Guid id) => new(id, DeskRoles.Member);

    public static Actor Volunteer(Guid id) => new(id, DeskRoles.Volunteer);

    public static Actor Librarian(Guid id) => new(id, DeskRoles.Librarian);

    public bool IsSignedIn => UserId is not null;

    public bool IsVolunteer => Role is DeskRoles.Volunteer or DeskRoles.Librarian;

    public bool IsLibrarian => Role == DeskRoles.Librarian;
}
