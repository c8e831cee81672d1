namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Refusals for codes and numbers that lead nowhere.</summary>
public static class FindingRefusals
{
    public const string NotFoundCode = "seed.not-found";

    internal static Refusal NoLot(string code) => new(NotFoundCode, $"There is no lot {code} in this library. Compare the code with the label.");

    internal static Refusal UndoneLot(string code) => new(NotFoundCode, $"Lot {code} was taken down and undone again. The ledger keeps both entries.");

    internal static Refusal NoAccession(string code) => new(NotFoundCode, $"There is no accession {code} in this library. Compare the code with the label.");

    internal static Refusal NoPacket(string code) => new(NotFoundCode, $"There is no packet {code} in this library. It may come from another library: ask at the counter.");

    internal static Refusal NoLoan { get; } = new(NotFoundCode, "This loan is not on record, or its entry was undone. Scan the packet again.");

    internal static Refusal NoRequest { get; } = new(NotFoundCode, "This request is not on record, or its entry was undone.");

    internal static Refusal NoGrowOut { get; } = new(NotFoundCode, "This grow-out is not on record, or its entry was undone.");

    internal static Refusal NoHold { get; } = new(NotFoundCode, "This hold is not on record, or its entry was undone.");

    internal static Refusal NoEntry { get; } = new(NotFoundCode, "The ledger has no entry of that number.");

    internal static Refusal NoPerson { get; } = new(NotFoundCode, "Nobody with that e-mail address has a sign-in here. Ask them to sign up first, or check the spelling.");
}
