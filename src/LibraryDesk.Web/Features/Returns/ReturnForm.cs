using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.Lots;
using LibraryDesk.Web.Shared.Forms;
using static LibraryDesk.Web.Features.Returns.ReturnsText;

namespace LibraryDesk.Web.Features.Returns;

/// <summary>What a grower tells about seed that comes home, as typed. Nothing typed is ever dropped.</summary>
public sealed class ReturnForm
{
    public string? Who { get; set; }
    public string? Grown { get; set; }
    public string? Saved { get; set; }
    public string? Seen { get; set; }
    public string? Removed { get; set; }
    public Isolation Isolation { get; set; } = Isolation.NotTold;
    public string? Near { get; set; }
    public string? OthersFlowered { get; set; }
    public HarvestManner Manner { get; set; }
    public string? Amount { get; set; }
    public string? AmountUnit { get; set; }
    public string? Sown { get; set; }
    public string? Harvested { get; set; }
    public bool? StakeStayed { get; set; }
    public string? Place { get; set; }

    /// <summary>True when what the desk asked about is meant.</summary>
    public bool IsSure { get; set; }

    /// <summary>The button pressed: "show" to see what it makes, anything else to hand in.</summary>
    public string? Step { get; set; }

    /// <summary>The facts, as far as they can be read.</summary>
    public GrowOutFacts Facts => new(
        AmountEntry.ReadCount(Grown), AmountEntry.ReadCount(Saved), AmountEntry.ReadCount(Seen), AmountEntry.ReadCount(Removed), Isolation,
        AmountEntry.ReadMetres(Near), OthersFlowered switch { "yes" => true, "no" => false, _ => null }, Manner, AmountEntry.ReadDay(Harvested));

    /// <summary>How much seed, as far as it can be read.</summary>
    public Quantity? Seed => AmountEntry.Read(Amount, AmountUnit).Match(seed => (Quantity?)seed, _ => null);

    /// <summary>All that is wrong with single fields and between them.</summary>
    /// <param name="isHandingIn">True when the amount is needed.</param>
    public IReadOnlyList<FormFault> Faults(bool isHandingIn)
    {
        var faults = new List<FormFault>();
        foreach (var (field, label, typed) in new[] { ("grown", Say["Plants grown"], Grown), ("saved", Say["Saved from"], Saved), ("seen", Say["Off-types seen"], Seen), ("removed", Say["Of those, pulled out"], Removed) })
        {
            if (!string.IsNullOrWhiteSpace(typed) && AmountEntry.ReadCount(typed) is null) faults.Add(new(field, Say[$"{label}: give a whole number, or leave it empty when you don’t know."]));
        }
        if (!string.IsNullOrWhiteSpace(Near) && AmountEntry.ReadMetres(Near) is null)
            faults.Add(new("near", Say["Give the distance in metres, such as 30, or with its unit, such as 100 ft; leave it empty when you don’t know."]));
        var facts = Facts;
        if (facts.PlantsSavedFrom > facts.PlantsGrown) faults.Add(new("saved", Say[$"{Say["Saved from"]}: at most {facts.PlantsGrown}, the plants grown."]));
        if (facts.OffTypesSeen > facts.PlantsGrown) faults.Add(new("seen", Say[$"{Say["Off-types seen"]}: at most {facts.PlantsGrown}, the plants grown."]));
        if (facts.OffTypesRemoved > facts.OffTypesSeen) faults.Add(new("removed", Say[$"{Say["Of those, pulled out"]}: at most {facts.OffTypesSeen}, the off-types seen."]));
        if (facts.PlantsSavedFrom <= facts.PlantsGrown && facts.OffTypesRemoved + facts.PlantsSavedFrom > facts.PlantsGrown) faults.Add(new("removed", Say["Plants that were pulled out gave no seed: those saved from and those pulled out are more than were grown."]));
        if (isHandingIn && StakeStayed is null) faults.Add(new("stake", Say["Say whether the stake stayed: the name rests on it."]));
        if (isHandingIn && AmountEntry.Read(Amount, AmountUnit).Refusal is { } noAmount) faults.Add(new("amount", noAmount));
        return faults;
    }
}
