namespace LibraryDesk.Desk.People;

/// <summary>Refusals about who may do what.</summary>
public static class PeopleRefusals
{
    public const string SignInCode = "people.sign-in-first";
    public const string MayNotCode = "people.may-not";

    public static Refusal SignInFirst { get; } = new(SignInCode, "Sign in first, then try again. What you typed is kept.");

    public static Refusal VolunteersOnly { get; } = new(MayNotCode, "Only volunteers and librarians can do this. Ask a librarian to invite you.");

    public static Refusal LibrariansOnly { get; } = new(MayNotCode, "Only librarians can do this. Ask one at the counter.");

    public static Refusal NotYours { get; } = new(MayNotCode, "This belongs to somebody else. Open your own from your desk.");
}
