using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides what may come in.</summary>
public static class ReceivingRules
{
    public const string ReceivedDayCode = "receiving.day";
    public const string HarvestYearCode = "receiving.harvest-year";

    // No source: an earlier year is a slip of the finger.
    private const int FirstYear = 1900;

    private static Refusal TooLongAgo { get; } = new(ReceivedDayCode, "This day is before 1900. Check the year.");

    /// <summary>Takes seed in from a donor. A declared name is the donor's word, not the library's.</summary>
    public static Outcome<Accessioned> Receive(Accessioned offered, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(offered);
        if (Checks.Days(offered.ReceivedOn, today) is { } wrongDay) return wrongDay;
        if (offered.ReceivedOn.Year < FirstYear) return TooLongAgo;
        if (offered.Received.IsEmpty) return SeedRefusals.Nothing();
        if (Checks.Incoming(offered.Received) is { } tooMuch) return tooMuch;
        if (Checks.SeedWeight(offered.ThousandSeedMilligrams) is { } wrongWeight) return wrongWeight;
        if (Checks.Species(offered.Species) is { } wrongSpecies) return wrongSpecies;
        if (offered.DeclaredName is { } name && Checks.Text(name, "Say the name it came under in a few words.", SeedTextLengths.Name) is { } wrongName) return wrongName;
        if (offered.HarvestYear is { } year && (year < FirstYear || year > offered.ReceivedOn.Year)) return new Refusal(HarvestYearCode, "Seed cannot come in before its harvest. Check the year of the harvest.");
        return offered with { DeclaredName = offered.DeclaredName?.Trim() };
    }

    /// <summary>Takes seed in from another library, and keeps the head of its chain.</summary>
    public static Outcome<TransferredIn> TransferIn(TransferredIn offered, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(offered);
        if (Checks.Days(offered.ReceivedOn, today) is { } wrongDay) return wrongDay;
        if (offered.ReceivedOn.Year < FirstYear) return TooLongAgo;
        if (offered.Received.IsEmpty) return SeedRefusals.Nothing();
        if (Checks.Incoming(offered.Received) is { } tooMuch) return tooMuch;
        if (Checks.SeedWeight(offered.ThousandSeedMilligrams) is { } wrongWeight) return wrongWeight;
        if (Checks.Text(offered.Library, "Say which library it came from in a few words.", SeedTextLengths.Name) is { } noLibrary) return noLibrary;
        if (Checks.Text(offered.ForeignCode, "Say the code it came under in a few words.") is { } noCode) return noCode;
        if (Checks.Species(offered.Species) is { } wrongSpecies) return wrongSpecies;
        if (offered.DeclaredName is { } name && Checks.Text(name, "Say the name it came under in a few words.", SeedTextLengths.Name) is { } wrongName) return wrongName;
        if (offered.ForeignHead is { } head && !ChainHead.Read(head).TryGet(out _, out var wrongHead)) return wrongHead;
        return offered;
    }
}
