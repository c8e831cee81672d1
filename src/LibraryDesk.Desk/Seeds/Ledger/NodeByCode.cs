using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>What a code is the code of.</summary>
internal enum CodeKind
{
    Packet,
    Lot,
    Accession,
}

/// <summary>A code of any kind, read.</summary>
internal sealed record AnyCode(CodeKind Kind, string Code)
{
    /// <summary>Reads what was typed or scanned; the refusal says what is wrong with it.</summary>
    public static Outcome<AnyCode> Read(string? typed)
    {
        if (LotCode.TryParse(typed, out var lot, out var noLot)) return new AnyCode(CodeKind.Lot, lot.ToString());
        if (AccessionCode.TryParse(typed, out var accession, out _)) return new AnyCode(CodeKind.Accession, accession.ToString());
        if (PacketCode.TryParse(typed, out var packet, out var noPacket)) return new AnyCode(CodeKind.Packet, packet.ToString());
        return (typed ?? "").TrimStart().StartsWith("L", StringComparison.OrdinalIgnoreCase) ? noLot : noPacket;
    }

    /// <summary>That nothing in this library has the code.</summary>
    public Refusal NotThere => Kind switch
    {
        CodeKind.Lot => FindingRefusals.NoLot(Code),
        CodeKind.Accession => FindingRefusals.NoAccession(Code),
        _ => FindingRefusals.NoPacket(Code),
    };
}

/// <summary>A node of the lineage, found by the code people read.</summary>
/// <param name="Node">Its number.</param>
/// <param name="Code">Its code as printed.</param>
internal sealed record NodeByCode(long Node, string Code)
{
    /// <summary>The lot, accession or packet of a code; the refusal says what is wrong with it, or that there is none.</summary>
    public static async Task<Outcome<NodeByCode>> FindAsync(LibraryDbContext db, string? typed, CancellationToken stop)
    {
        if (!AnyCode.Read(typed).TryGet(out var read, out var no)) return no;
        var code = read.Code;
        var id = read.Kind switch
        {
            CodeKind.Lot => await db.Set<LotRow>().Where(row => row.Code == code && !row.IsVoid).Select(row => row.Id).SingleOrDefaultAsync(stop),
            CodeKind.Accession => await db.Set<AccessionRow>().Where(row => row.Code == code && !row.IsVoid).Select(row => row.Id).SingleOrDefaultAsync(stop),
            _ => await db.Set<PacketRow>().Where(row => row.Code == code && row.Standing != PacketStanding.Void).Select(row => row.Id).SingleOrDefaultAsync(stop),
        };
        return id == 0 ? read.NotThere : new NodeByCode(id, code);
    }
}
