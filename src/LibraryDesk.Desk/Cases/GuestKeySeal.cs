using System.Security.Cryptography;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Settings;
using Microsoft.AspNetCore.DataProtection;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases;

/// <summary>
/// Keeps a guest's secret locked with the server's own keys beside its hash, so that a later letter can carry the link again. Read out of
/// the cases alone it opens nothing.
/// </summary>
public sealed class GuestKeySeal(IDataProtectionProvider keys)
{
    private readonly IDataProtector _lock = keys.CreateProtector("LibraryDesk.GuestLink");

    /// <summary>The secret, locked.</summary>
    public string Lock(string key) => _lock.Protect(key);

    /// <summary>How a guest comes to their case: the address with the secret where it can be had, else words.</summary>
    internal async Task<string> WayInAsync(LibraryDbContext db, CaseRow row, CancellationToken stop)
    {
        var site = await db.Set<LibrarySettingsRow>().Select(s => s.PublicAddress).SingleOrDefaultAsync(stop) ?? "";
        return site.Length > 0 && Open(row.GuestKeyLocked) is { } key
            ? $"{site.TrimEnd('/')}/c/{key}"
            : Say["Open it with the link in the first letter about this case."];
    }

    private string? Open(string? locked)
    {
        if (locked is null) return null;
        try
        {
            return _lock.Unprotect(locked);
        }
        catch (CryptographicException)
        {
            // The server's keys were lost or replaced; the link in the first letter still works.
            return null;
        }
    }
}
