using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace LibraryDesk.Photos;

/// <summary>Names one stored size of one photo: the content hash and the size, as <c>HASH-1600</c>. Nothing else can be made into a key, so a key is safe in a path.</summary>
public readonly record struct PhotoKey
{
    private const int HashLength = 64;

    private PhotoKey(string contentHash, PhotoSize size)
    {
        ContentHash = contentHash;
        Size = size;
    }

    /// <summary>64 lower-case hex digits. Null only in a key that was never made; a store treats that one as absent.</summary>
    public string? ContentHash { get; }

    /// <summary>Which of the three sizes.</summary>
    public PhotoSize Size { get; }

    /// <summary>The key of one size; throws when the hash is not 64 lower-case hex digits.</summary>
    public static PhotoKey For(string contentHash, PhotoSize size)
    {
        ArgumentNullException.ThrowIfNull(contentHash);
        if (!IsHash(contentHash)) throw new ArgumentException("A content hash has 64 lower-case hex digits.", nameof(contentHash));
        if (!Enum.IsDefined(size)) throw new ArgumentOutOfRangeException(nameof(size));
        return new PhotoKey(contentHash, size);
    }

    /// <summary>Reads a key as it stands in an address.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out PhotoKey key)
    {
        key = default;
        if (text is null || text.Length <= HashLength || text[HashLength] != '-' || !IsHash(text[..HashLength])) return false;
        if (!int.TryParse(text.AsSpan(HashLength + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var edge)) return false;
        if (!Enum.IsDefined((PhotoSize)edge)) return false;
        key = new PhotoKey(text[..HashLength], (PhotoSize)edge);
        return true;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{ContentHash}-{(int)Size}");

    private static bool IsHash(string text) => text.Length == HashLength && text.All(char.IsAsciiHexDigitLower);
}
