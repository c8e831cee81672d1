using LibraryDesk.Data.Cases;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>What was typed to begin a case; kept as typed, so that a refusal loses nothing.</summary>
internal sealed class NewCaseForm
{
    public const string Tray = "tray";

    /// <summary>plant, fruit, seeds or tray.</summary>
    public string? What { get; set; }

    public string? Plants { get; set; }

    public string? Crop { get; set; }

    public string? Title { get; set; }

    public string? Email { get; set; }

    public bool WalkIn { get; set; }

    public Specimen Specimen => What switch
    {
        "fruit" => Specimen.FruitAlone,
        "seeds" => Specimen.SeedsAlone,
        Tray => Specimen.Seedling,
        _ => Specimen.Plant,
    };
}
