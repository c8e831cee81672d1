using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides what may come in.</summary>
public static class ReceivingRules
{
    public const string HarvestYearCode = "receiving.harvest-year";

    /// <summary>Takes seed in from a donor. A declared name is the donor's word, not the library's.</summary>
    public static Outcome<Accessioned> Receive(Accessioned offered, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(offered);
        if (Checks.Days(offered.ReceivedOn, today) is { } wrongDay) return wrongDay;
        if (offered.Received.IsEmpty) return SeedRefusals.Nothing();
        if (Checks.SeedWeight(offered.ThousandSeedMilligrams) is { } wrongWeight) return wrongWeight;
        if (offered.DeclaredName is { } name && Checks.Text(name, "the name it came under") is { } wrongName) return wrongName;
        if (offered.HarvestYear is { } year && (year < 1900 || year > offered.ReceivedOn.Year)) return new Refusal(HarvestYearCode, "Seed cannot come in before its harvest. Check the year of the harvest.");
        return offered with { DeclaredName = offered.DeclaredName?.Trim() };
    }

    /// <summary>Takes seed in from another library, and keeps the head of its chain.</summary>
    public static Outcome<TransferredIn> TransferIn(TransferredIn offered, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(offered);
        if (Checks.Days(offered.ReceivedOn, today) is { } wrongDay) return wrongDay;
        if (offered.Received.IsEmpty) return SeedRefusals.Nothing();
        if (Checks.SeedWeight(offered.ThousandSeedMilligrams) is { } wrongWeight) return wrongWeight;
        if (Checks.Text(offered.Library, "which library it came from") is { } noLibrary) return noLibrary;
        if (Checks.Text(offered.ForeignCode, "the code it came under") is { } noCode) return noCode;
        if (offered.ForeignHead is { } head && !ChainHead.Read(head).TryGet(out _, out var wrongHead)) return wrongHead;
        return offered;
    }
}
