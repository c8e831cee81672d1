using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides which names may be claimed. A variety is never claimed from looks: many varieties look alike.</summary>
public static class NamingRules
{
    public const string NothingCode = "naming.nothing";
    public const string VarietyFromLooksCode = "naming.variety-from-looks";
    public const string DoesNotFitCode = "naming.does-not-fit";
    public const string NotItsOriginCode = "naming.not-its-origin";
    public const string EvidenceCode = "naming.evidence";
    public const string WhoCode = "naming.who";

    /// <summary>Claims a name for an accession or a lot.</summary>
    /// <param name="claim">The claim as it would stand.</param>
    /// <param name="began">The day the accession or lot came to be.</param>
    /// <param name="originsBelow">Of the nodes that a desk determination may name as the plant's origin: the node itself and all downstream of it. Only looked at for a determination.</param>
    /// <param name="today">Today.</param>
    public static Outcome<Named> Claim(Named claim, DateOnly began, IReadOnlySet<NodeId> originsBelow, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(originsBelow);
        if (claim.Variety is null && claim.Species is null) return new Refusal(NothingCode, "Say which species or which variety is claimed.");
        if (Checks.Species(claim.Species) is { } wrongSpecies) return wrongSpecies;
        if (claim.Variety is { } variety && Checks.Text(variety, "Say which variety in a few words.", SeedTextLengths.Name) is { } wrongName) return wrongName;
        if (Checks.Days(claim.ClaimedOn, today, began) is { } wrongDay) return wrongDay;
        if (claim.Grounds is ClaimGrounds.GrowersWord or ClaimGrounds.DonorsWord && claim.By is null) return new Refusal(WhoCode, "Say whose word it is, or claim it from the label only.");
        if (claim.Grounds != ClaimGrounds.DeskDetermination)
        {
            return claim.Evidence is null ? Trimmed(claim) : new Refusal(EvidenceCode, "Only a determination of the desk carries a case.");
        }

        if (claim.Evidence is not { } evidence || string.IsNullOrWhiteSpace(evidence.Case)) return new Refusal(EvidenceCode, "A determination needs the number of its case.");
        if ((evidence.Link is null) != (evidence.Origin is null)) return new Refusal(EvidenceCode, "Say both what ties the plant to the library's seed and which seed that is.");
        if (claim.Variety is not null && evidence.Origin is null) return new Refusal(VarietyFromLooksCode, "A variety can't be determined from looks. Add an origin first: a loan, a packet code or a donor record that leads to this seed.");
        if (claim.Variety is not null && !evidence.Fits) return new Refusal(DoesNotFitCode, "A trait of the plant contradicts this variety. Claim the species alone, or look at that trait again.");
        if (evidence.Origin is { } origin && !originsBelow.Contains(origin)) return new Refusal(NotItsOriginCode, "The plant's origin does not lead to this seed. Claim the name for the lot it does lead to.");
        return Trimmed(claim);
    }

    private static Named Trimmed(Named claim) => claim with { Variety = claim.Variety?.Trim() };
}
