namespace LibraryDesk.Lineage.Ledger;

/// <summary>What happened to seed. The text in the ledger is the kebab form, such as <c>lot-made</c>.</summary>
public enum EntryKind
{
    /// <summary>Seed came in from a donor.</summary>
    Accessioned,

    /// <summary>Seed came in from another library, with or without its chain.</summary>
    TransferredIn,

    /// <summary>A lot was made from an accession, a harvest, a split or a blend.</summary>
    LotMade,

    /// <summary>Packets were put up from a lot.</summary>
    Packeted,

    /// <summary>A member asked for seed of a lot.</summary>
    Requested,

    /// <summary>A packet was picked for a request.</summary>
    Picked,

    /// <summary>A packet was handed over.</summary>
    Lent,

    /// <summary>A loan came to its end.</summary>
    LoanEnded,

    /// <summary>Seed was grown for seed.</summary>
    GrownOut,

    /// <summary>Seed of a grow-out came back.</summary>
    Returned,

    /// <summary>A germination test was read.</summary>
    GerminationTested,

    /// <summary>A name was claimed.</summary>
    Named,

    /// <summary>Lending was stopped.</summary>
    Held,

    /// <summary>A hold or a recall was lifted.</summary>
    Released,

    /// <summary>Seed changed its drawer, freezer or branch.</summary>
    Moved,

    /// <summary>A stocktake.</summary>
    Counted,

    /// <summary>Seed was thrown away.</summary>
    Discarded,

    /// <summary>Seed left for another library.</summary>
    TransferredOut,

    /// <summary>Everything downstream was called back.</summary>
    Recalled,

    /// <summary>An earlier entry was undone, or said again rightly.</summary>
    Corrected,
}
