namespace LibraryDesk.Desk.People;

/// <summary>The three kinds of people. A librarian may do what a volunteer may, a volunteer what a member may.</summary>
public static class DeskRoles
{
    public const string Member = "member";
    public const string Volunteer = "volunteer";
    public const string Librarian = "librarian";

    /// <summary>All three, lowest first.</summary>
    public static IReadOnlyList<string> All { get; } = [Member, Volunteer, Librarian];
}
