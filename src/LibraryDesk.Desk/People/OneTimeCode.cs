using System.Security.Cryptography;
using System.Text;

namespace LibraryDesk.Desk.People;

/// <summary>Secrets that open something once or for one person: set-up codes, invitations, guests' links. Only the hash is kept.</summary>
public static class OneTimeCode
{
    // No I, L, O, 0, 1: read aloud at a counter, none is taken for another.
    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    /// <summary>Sixteen letters in fours, 79 bits: short enough to type once.</summary>
    public static string ForTyping()
    {
        var letters = RandomNumberGenerator.GetItems<char>(Letters, 16);
        return string.Join('-', letters.Chunk(4).Select(four => new string(four)));
    }

    /// <summary>256 bits, safe in an address.</summary>
    public static string ForLink() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    /// <summary>SHA-256 in hex of the code as people may type it: upper case, no spaces or hyphens.</summary>
    public static string Hash(string code)
    {
        var plain = new string(code.Where(char.IsLetterOrDigit).Select(char.ToUpperInvariant).ToArray());
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(plain)));
    }

    /// <summary>Compares a code with a kept hash in constant time.</summary>
    public static bool Fits(string code, string? hash) =>
        hash is not null
        && CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(Hash(code)), Encoding.ASCII.GetBytes(hash));
}
