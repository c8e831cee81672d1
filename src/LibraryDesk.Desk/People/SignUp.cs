using LibraryDesk.Data.People;

namespace LibraryDesk.Desk.People;

/// <summary>A visitor becomes a member, where the library lets people sign up themselves.</summary>
public sealed class SignUp(LibrarySettings settings, Accounts accounts)
{
    public const string InvitationOnly = "people.invitation-only";

    public async Task<Outcome<DeskUser>> AsMemberAsync(string? email, string? name, string? password, CancellationToken stop)
    {
        if (!(await settings.ReadAsync(stop)).SignUpOpen)
            return new Refusal(InvitationOnly, "This library takes members by invitation. Ask a librarian at the counter for one.");
        return await accounts.MakeAsync(email, name, password, DeskRoles.Member);
    }
}
