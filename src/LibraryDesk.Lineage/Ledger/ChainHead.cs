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

    /// <summary>Reads a checkpoint back from its print. Spaces and capitals are forgiven.</summary>
    public static Outcome<ChainHead> Read(string? typed)
    {
        var plain = string.Concat((typed ?? "").Where(character => !char.IsWhiteSpace(character))).ToLowerInvariant();
        var colon = plain.IndexOf(':', StringComparison.Ordinal);
        if (colon < 0
            || !long.TryParse(plain.AsSpan(0, colon), NumberStyles.None, CultureInfo.InvariantCulture, out var height)
            || !EntryHash.TryParse(plain[(colon + 1)..], out var hash))
        {
            return new Refusal("checkpoint.shape", "A checkpoint is a number, a colon and 64 characters from 0-9 and a-f. Copy the whole line.");
        }

        return new ChainHead(height, hash);
    }
}
