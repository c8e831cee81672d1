namespace LibraryDesk.Data.Settings;

/// <summary>The library's own choices. One row, id 1.</summary>
public sealed class LibrarySettingsRow : IRevisioned
{
    public int Id { get; set; } = 1;
    public string Name { get; set; } = "Seed library";
    /// <summary>Second line under the name, e.g. the place; empty for none.</summary>
    public string Tagline { get; set; } = "";
    /// <summary>The letter that opens packet codes, e.g. Q.</summary>
    public string CodePrefix { get; set; } = "Q";
    /// <summary>Concordant opinions that determine a case, 1 to 3.</summary>
    public int OpinionsNeeded { get; set; } = 2;
    /// <summary>True: anybody may sign up as a member. False: by invitation only.</summary>
    public bool SignUpOpen { get; set; } = true;
    /// <summary>Printed on labels and shown on packet pages; the library states what its local rules ask.</summary>
    public string SharingNotice { get; set; } = "";
    /// <summary>Where the local seed rules can be read; empty for none.</summary>
    public string LocalRulesUrl { get; set; } = "";
    /// <summary>Address that QR codes lead to, e.g. https://desk.example.org; empty: the address of the request.</summary>
    public string PublicAddress { get; set; } = "";
    /// <summary>Days a new lot or accession stays on intake hold, 0 for none.</summary>
    public int IntakeHoldDays { get; set; }
    /// <summary>Hash of the one-time set-up code while no librarian exists; null after set-up.</summary>
    public string? SetUpCodeHash { get; set; }
    public DateTimeOffset? DemoLoadedAt { get; set; }
    public long Revision { get; set; }
}
