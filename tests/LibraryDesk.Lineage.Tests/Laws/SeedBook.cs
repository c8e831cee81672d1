using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Laws;

/// <summary>What came in less what went out, by the acts alone, in seeds and in milligrams. It knows nothing of the state: it is the other side of the scales.</summary>
internal readonly record struct SeedBook(long Seeds, long Milligrams)
{
    /// <summary>What an act brought in or took away.</summary>
    public static SeedBook Of(SeedAct act) => act switch
    {
        Accessioned came => In(came.Received),
        TransferredIn came => In(came.Received),
        Returned came => In(came.Seed),
        LotMade made => made.Sources.Aggregate(default(SeedBook), (sum, source) => sum - In(source.Taken) + In(source.Given)),
        LoanEnded ended => -In(ended.Used),
        GrownOut grown => -In(grown.Sown),
        GerminationTested tested => -In(tested.Used),
        Counted counted => In(counted.Found) - In(counted.Expected),
        Discarded discarded => -In(discarded.Seed),
        TransferredOut sent => -In(sent.Seed),
        Corrected { Instead: { } instead } corrected => Of(instead.Act) - Of(corrected.Was.Act),
        Corrected undone => -Of(undone.Was.Act),
        _ => default,
    };

    /// <summary>What the state says is there.</summary>
    public static SeedBook There(SeedState state) => state.Accessions.Select(accession => accession.Stock)
        .Concat(state.Lots.Select(lot => lot.Stock)).Concat(state.Packets.Select(packet => packet.Stock))
        .Concat(state.GrowOuts.Select(growOut => growOut.Stock).OfType<Quantity>())
        .Aggregate(default(SeedBook), (sum, stock) => sum + In(stock));

    public static SeedBook operator +(SeedBook left, SeedBook right) => new(left.Seeds + right.Seeds, left.Milligrams + right.Milligrams);

    public static SeedBook operator -(SeedBook left, SeedBook right) => left + -right;

    public static SeedBook operator -(SeedBook book) => new(-book.Seeds, -book.Milligrams);

    private static SeedBook In(Quantity amount) => amount.Unit == SeedUnit.Seeds ? new(amount.Amount, 0) : new(0, amount.Amount);
}
