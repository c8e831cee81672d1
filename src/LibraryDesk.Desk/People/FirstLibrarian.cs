using LibraryDesk.Data.People;
using LibraryDesk.Data.Settings;
using Microsoft.AspNetCore.Identity;

namespace LibraryDesk.Desk.People;

/// <summary>First-run set-up: whoever can read the server's console makes the first librarian, once.</summary>
public sealed class FirstLibrarian(
    IDbContextFactory<LibraryDbContext> factory, UserManager<DeskUser> users, Accounts accounts)
{
    public const string WrongCode = "people.set-up-code";

    /// <summary>True while the library has no librarian.</summary>
    public async Task<bool> IsMissingAsync() => (await users.GetUsersInRoleAsync(DeskRoles.Librarian)).Count == 0;

    /// <summary>A fresh code while there is no librarian, to be shown on the console alone; null afterwards. Ends any earlier code.</summary>
    public async Task<string?> IssueCodeAsync(CancellationToken stop)
    {
        if (!await IsMissingAsync()) return null;
        await using var db = await factory.CreateDbContextAsync(stop);
        var settings = await SettingsOf(db, stop);
        var code = OneTimeCode.ForTyping();
        settings.SetUpCodeHash = OneTimeCode.Hash(code);
        await db.SaveChangesAsync(stop);
        return code;
    }

    /// <summary>Makes the first librarian and names the library.</summary>
    public async Task<Outcome<DeskUser>> SetUpAsync(
        string? code, string? libraryName, string? email, string? name, string? password, CancellationToken stop)
    {
        if (!await IsMissingAsync()) return new Refusal("people.set-up-done", "The library is set up already. Sign in.");
        await using var db = await factory.CreateDbContextAsync(stop);
        var settings = await SettingsOf(db, stop);
        if (!OneTimeCode.Fits(code ?? "", settings.SetUpCodeHash))
            return new Refusal(WrongCode, "That is not the code on the server's console. It is printed anew at each start.");
        if (string.IsNullOrWhiteSpace(libraryName) || libraryName.Trim().Length > 120)
            return new Refusal("settings.name", "Give the library a name of at most 120 letters.");

        // The code is spent before the account is made: two people typing it at once make one librarian, not two.
        settings.SetUpCodeHash = null;
        settings.Name = libraryName.Trim();
        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new Refusal(WrongCode, "Somebody used the code just now. Restart the server for a new one.");
        }

        var made = await accounts.MakeAsync(email, name, password, DeskRoles.Librarian);
        if (made.Refusal is not null)
        {
            settings.SetUpCodeHash = OneTimeCode.Hash(code!);
            await db.SaveChangesAsync(stop);
        }
        return made;
    }

    private static async Task<LibrarySettingsRow> SettingsOf(LibraryDbContext db, CancellationToken stop)
    {
        var settings = await db.Set<LibrarySettingsRow>().SingleOrDefaultAsync(stop);
        if (settings is null) db.Add(settings = new LibrarySettingsRow());
        return settings;
    }
}
