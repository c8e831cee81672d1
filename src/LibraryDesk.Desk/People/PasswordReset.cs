using LibraryDesk.Data.Mail;
using LibraryDesk.Data.People;
using LibraryDesk.Desk.Words;
using Microsoft.AspNetCore.Identity;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.People;

/// <summary>A forgotten password, by a link to the address of the account.</summary>
public sealed class PasswordReset(
    IDbContextFactory<LibraryDbContext> factory, UserManager<DeskUser> users, TimeProvider clock)
{
    /// <summary>Writes the letter when there is such an account. Says the same in either case, so that nobody learns who has one.</summary>
    /// <param name="linkFor">Turns (user id, token) into the address that the letter carries.</param>
    public async Task AskAsync(string? email, Func<Guid, string, string> linkFor, CancellationToken stop)
    {
        if (string.IsNullOrWhiteSpace(email) || await users.FindByEmailAsync(email.Trim()) is not { ErasedAt: null } user) return;
        var token = await users.GeneratePasswordResetTokenAsync(user);
        await using var db = await factory.CreateDbContextAsync(stop);
        using var spoken = Languages.Speak(await ChosenLanguage.OfAsync(db, user.Id, stop) ?? Languages.Now);
        db.Add(new OutgoingMailRow
        {
            To = user.Email!,
            Subject = Say["Set a new password"],
            Body = $"{Say["Somebody, probably you, asked for a new password."]}\n\n{Say["Set it here:"]}\n{linkFor(user.Id, token)}\n\n{Say["If it was not you, do nothing."]}\n",
            CreatedAt = clock.GetUtcNow(),
            DueAt = clock.GetUtcNow(),
        });
        await db.SaveChangesAsync(stop);
    }

    /// <summary>Sets the new password and ends every session of the account.</summary>
    public async Task<Outcome<DeskUser>> SetAsync(Guid userId, string? token, string? password)
    {
        if (await users.FindByIdAsync(userId.ToString()) is not { ErasedAt: null } user)
            return new Refusal("people.link-old", "This link has been used or is too old. Ask for a new one.");
        var result = await users.ResetPasswordAsync(user, token ?? "", password ?? "");
        if (!result.Succeeded) return Accounts.Explain(result);
        await users.SetLockoutEndDateAsync(user, null);
        return user;
    }
}
