namespace LibraryDesk.Lineage.Seeds;

/// <summary>
/// A store beneath a <see cref="SeedState"/>, where it finds records that are not in the slice itself: so that a whole ledger can be replayed
/// without the whole library in memory. Each gives null where it has none of that number.
/// </summary>
public interface ISeedRecords
{
    /// <summary>An accession.</summary>
    Accession? Find(AccessionId id);

    /// <summary>A lot.</summary>
    Lot? Find(LotId id);

    /// <summary>A packet.</summary>
    Packet? Find(PacketId id);

    /// <summary>A grow-out.</summary>
    GrowOut? Find(GrowOutId id);

    /// <summary>A loan.</summary>
    Loan? Find(LoanId id);

    /// <summary>A request.</summary>
    SeedRequest? Find(RequestId id);

    /// <summary>A hold.</summary>
    Hold? Find(HoldId id);

    /// <summary>A claim.</summary>
    NameClaim? Find(ClaimId id);

    /// <summary>A test.</summary>
    GerminationTest? Find(TestId id);

    /// <summary>A transfer by its entry.</summary>
    SeedTransfer? FindTransfer(long entry);
}
