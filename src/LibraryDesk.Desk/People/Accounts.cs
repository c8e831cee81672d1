using LibraryDesk.Data.People;
using LibraryDesk.Desk.Words;
using Microsoft.AspNetCore.Identity;

namespace LibraryDesk.Desk.People;

/// <summary>Makes accounts for the acts of this folder, so that the rules of names, addresses and passwords stand once.</summary>
public sealed class Accounts(UserManager<DeskUser> users, TimeProvider clock)
{
    /// <summary>The longest name kept.</summary>
    public const int NameLength = 120;

    /// <summary>Makes an account with one role; refuses what Identity refuses, in plain words.</summary>
    public async Task<Outcome<DeskUser>> MakeAsync(string? email, string? name, string? password, string role)
    {
        email = email?.Trim() ?? "";
        name = name?.Trim() ?? "";
        if (Unfit(email, name, password) is [var unfit, ..]) return unfit;

        var user = new DeskUser
        {
            Id = Guid.NewGuid(),
            UserName = email,
            Email = email,
            DisplayName = name,
            SearchName = name.ToUpperInvariant(),
            JoinedAt = clock.GetUtcNow(),
            LockoutEnabled = true,
        };
        var made = await users.CreateAsync(user, password ?? "");
        if (!made.Succeeded) return Explain(made);
        var given = await users.AddToRoleAsync(user, role);
        if (!given.Succeeded) return Explain(given);
        // Letters go on in the language in which the account was made, until another is chosen.
        if (Languages.Now != Languages.All[0]) await users.AddClaimAsync(user, new(Languages.ClaimType, Languages.Now));
        return user;
    }

    /// <summary>All that keeps an account from being made, as far as it is seen without asking whether the address is taken.</summary>
    public static IReadOnlyList<Refusal> Unfit(string? email, string? name, string? password)
    {
        var unfit = new List<Refusal>();
        if ((name?.Trim() ?? "").Length is 0 or > NameLength) unfit.Add(new("people.name", "Tell us what to call you, in at most 120 letters."));
        if (!LooksLikeEmail(email?.Trim() ?? "")) unfit.Add(new("people.email", "That is not an e-mail address. It looks like name@example.org."));
        if (string.IsNullOrEmpty(password)) unfit.Add(new("people.password", "Use a password of at least 10 letters. Several words are easiest to remember."));
        return unfit;
    }

    /// <summary>Identity's faults as one refusal.</summary>
    public static Refusal Explain(IdentityResult result) => result.Errors.First() switch
    {
        { Code: "DuplicateEmail" or "DuplicateUserName" } =>
            new Refusal("people.email-taken", "There is an account with this address. Sign in, or set a new password."),
        { Code: "InvalidEmail" or "InvalidUserName" } =>
            new Refusal("people.email", "That is not an e-mail address. It looks like name@example.org."),
        { Code: "PasswordTooShort" or "PasswordRequiresUniqueChars" } =>
            new Refusal("people.password", "Use a password of at least 10 letters. Several words are easiest to remember."),
        { Code: "PasswordMismatch" } => new Refusal("people.password-wrong", "The present password is not right. Try again."),
        { Code: "InvalidToken" } => new Refusal("people.link-old", "This link has been used or is too old. Ask for a new one."),
        { Code: "ConcurrencyFailure" } => new Refusal("people.changed-meanwhile", "This account changed just now. Try again."),
        var other => new Refusal("people.account", other.Description),
    };

    private static bool LooksLikeEmail(string email) =>
        email.Length <= 254 && System.Net.Mail.MailAddress.TryCreate(email, out var address) && address.Address == email
        && address.Host.Contains('.', StringComparison.Ordinal);
}
