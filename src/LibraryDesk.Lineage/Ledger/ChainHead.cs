using System.Globalization;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>The last entry of a chain: also the checkpoint that a librarian prints or mails, and checks later.</summary>
/// <param name="Height">The sequence number of the last entry; 0 for an empty ledger.</param>
/// <param name="Hash">Its hash; zeros for an empty ledger.</param>
public readonly record struct ChainHead(long Height, EntryHash Hash)
{
    /// <summary>The head of a ledger without entries.</summary>
    public static ChainHead Empty => default;

    /// <summary>For printing: the height, a colon, the hash.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Height}:{Hash.Hex}");

    /// <summary>Reads a checkpoint back from its print. Spaces and capitals are forgiven, and so is a space for the colon.</summary>
    public static Outcome<ChainHead> Read(string? typed)
    {
        var whole = (typed ?? "").Trim().ToLowerInvariant();
        var end = whole.IndexOf(':', StringComparison.Ordinal) is >= 0 and var colon ? colon : whole.AsSpan().IndexOfAny(" \t\r\n");
        if (end < 0 || !long.TryParse(Plain(whole[..end]), NumberStyles.None, CultureInfo.InvariantCulture, out var height))
            return new Refusal("checkpoint.shape", "A checkpoint is a number, a colon and 64 characters from 0-9 and a-f. Copy the whole line.");

        var hex = Plain(whole[(end + 1)..]);
        var strange = hex.FirstOrDefault(character => !char.IsAsciiHexDigit(character));
        if (strange != default)
            return new Refusal("checkpoint.letter", $"“{strange}” is in no hash: a hash has 0-9 and a-f alone. Compare it with the print; an O is a zero there, an l is a one.");
        if (!EntryHash.TryParse(hex, out var hash))
            return new Refusal("checkpoint.length", $"This hash has {hex.Length} characters, and a hash has {EntryHash.Length}. Compare it with the print.");
        return new ChainHead(height, hash);
    }

    private static string Plain(string text) => string.Concat(text.Where(character => !char.IsWhiteSpace(character)));
}
