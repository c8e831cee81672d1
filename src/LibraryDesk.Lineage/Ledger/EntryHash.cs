using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>A SHA-256 (FIPS 180-4) of a ledger entry, as 64 lower-case hex digits. The default stands before the first entry: all zeros.</summary>
public readonly record struct EntryHash
{
    private static readonly SearchValues<char> _hexDigits = SearchValues.Create("0123456789abcdef");
    private static readonly string _zeros = new('0', Length);

    private readonly string? _hex;

    private EntryHash(string hex) => _hex = hex;

    /// <summary>The number of hex digits.</summary>
    public const int Length = 64;

    /// <summary>64 lower-case hex digits.</summary>
    public string Hex => _hex ?? _zeros;

    /// <summary>The hash of a text in UTF-8.</summary>
    public static EntryHash Of(string text) => new(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))));

    /// <summary>The hash of some bytes.</summary>
    public static EntryHash Of(ReadOnlySpan<byte> bytes)
    {
        Span<byte> digest = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(bytes, digest);
        return new(Convert.ToHexStringLower(digest));
    }

    /// <summary>True when this is the hash of some bytes.</summary>
    public bool IsOf(ReadOnlySpan<byte> bytes)
    {
        Span<byte> digest = stackalloc byte[SHA256.HashSizeInBytes];
        Span<char> hex = stackalloc char[Length];
        SHA256.HashData(bytes, digest);
        return Convert.TryToHexStringLower(digest, hex, out _) && hex.SequenceEqual(Hex);
    }

    /// <summary>Reads 64 lower-case hex digits; nothing else is a hash.</summary>
    public static bool TryParse([NotNullWhen(true)] string? hex, out EntryHash hash)
    {
        hash = default;
        if (hex is not { Length: Length } || hex.AsSpan().ContainsAnyExcept(_hexDigits)) return false;
        hash = hex == _zeros ? default : new(hex);
        return true;
    }

    /// <inheritdoc/>
    public override string ToString() => Hex;
}
