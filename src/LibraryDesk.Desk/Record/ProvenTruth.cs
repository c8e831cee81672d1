namespace LibraryDesk.Desk.Record;

/// <summary>Whether a determination can judge the odds, or teach the guide: only where it does not lean on the odds that were shown.</summary>
internal static class ProvenTruth
{
    /// <param name="qualifier">The determination's qualifier; a hedged name proves nothing.</param>
    /// <param name="originPacketCode">The packet that the variety came by; null without one.</param>
    /// <param name="sealedTaxa">What the opinions of the round said before any odds were seen.</param>
    /// <returns>True where the origin is known, or more than half of the sealed opinions had named the taxon already.</returns>
    public static bool Holds(string taxon, string qualifier, string? originPacketCode, IEnumerable<string> sealedTaxa)
    {
        if (qualifier.Length > 0) return false;
        if (originPacketCode is not null) return true;
        var list = sealedTaxa.ToList();
        return list.Count > 0 && 2 * list.Count(t => t == taxon) > list.Count;
    }
}
