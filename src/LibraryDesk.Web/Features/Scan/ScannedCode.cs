using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Codes;

namespace LibraryDesk.Web.Features.Scan;

/// <summary>A code of this library, as a person typed it, a hand scanner wrote it or a camera read it.</summary>
/// <param name="Text">The code as printed.</param>
/// <param name="IsLot">True for a lot's code, false for a packet's.</param>
public sealed record ScannedCode(string Text, bool IsLot)
{
    public const string EmptyCode = "code.empty";
    public const string ForeignCode = "scan.foreign";
    public const string OtherKindCode = "scan.other-kind";

    private const string PacketPath = "/p/";
    private const string LotPath = "/lots/";

    /// <summary>The page the code opens.</summary>
    public string Path => (IsLot ? LotPath : PacketPath) + Text;

    /// <summary>Reads a code, or the address that our own labels carry.</summary>
    /// <param name="text">What was typed or scanned.</param>
    /// <param name="ownHosts">Hosts this desk answers under; an address at another host belongs to somebody else.</param>
    public static Outcome<ScannedCode> Read(string? text, IReadOnlyCollection<string> ownHosts)
    {
        ArgumentNullException.ThrowIfNull(ownHosts);
        var plain = (text ?? "").Trim();
        if (plain.Length == 0) return new Refusal(EmptyCode, "Type the code on the label, for example Q26-0418-N.");
        if (Uri.TryCreate(plain, UriKind.Absolute, out var address)) return FromAddress(address, ownHosts);
        if (plain.Contains(':', StringComparison.Ordinal)) return OtherKind;
        // Thirteen or twelve digits are a shop's bar code (EAN-13, UPC-A), not a slip in one of ours.
        if (plain.Length is 12 or 13 && plain.All(char.IsAsciiDigit)) return OtherKind;
        return FromCode(plain);
    }

    /// <summary>Said where packets are scanned and a lot was.</summary>
    public static Refusal LotNotPacket(string lot) => new(OtherKindCode, $"{lot} is a lot. Scan one of its packets: the packet’s own code.");

    private static Outcome<ScannedCode> FromAddress(Uri address, IReadOnlyCollection<string> ownHosts)
    {
        if (address.Scheme != Uri.UriSchemeHttp && address.Scheme != Uri.UriSchemeHttps) return OtherKind;
        if (!ownHosts.Contains(address.Host, StringComparer.OrdinalIgnoreCase))
            return new Refusal(ForeignCode, $"This label leads to {address.Host}, which is not this library. Seed of another library is taken in as an accession: ask at the counter.");
        var path = address.AbsolutePath;
        if (path.StartsWith(PacketPath, StringComparison.OrdinalIgnoreCase)) return FromCode(path[PacketPath.Length..]);
        if (path.StartsWith(LotPath, StringComparison.OrdinalIgnoreCase)) return FromCode(path[LotPath.Length..]);
        return new Refusal(OtherKindCode, "This code leads to a page of this desk, but to no seed. Scan the label of a packet, a stake or a lot.");
    }

    private static Outcome<ScannedCode> FromCode(string typed) => typed.TrimStart().StartsWith('L') || typed.TrimStart().StartsWith('l')
        ? LotCode.Read(typed).Then<ScannedCode>(lot => new ScannedCode(lot.ToString(), true))
        : AccessionCode.Read(typed).Match<Outcome<ScannedCode>>(
            accession => new Refusal(OtherKindCode, $"{accession} is an accession, which has no page of its own. Type the code of its lot or of a packet."),
            _ => PacketCode.Read(typed).Then<ScannedCode>(packet => new ScannedCode(packet.ToString(), false)));

    private static Refusal OtherKind => new(OtherKindCode, "This is not one of our labels. Ours read like Q26-0418-N on packets and L26-031 on lots; type what stands on the label.");
}
