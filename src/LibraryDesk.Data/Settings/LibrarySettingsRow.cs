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
    /// <summary>Days after which seed of a loan is hoped for; 0 for no day.</summary>
    public int LoanDays { get; set; }
    /// <summary>The time zone whose midnight begins the library's days, as the tz database names it; empty for the server's own.</summary>
    public string TimeZone { get; set; } = "";
    /// <summary>The class of published isolation distance that growings are judged by, as a topic of the growing figures.</summary>
    public string IsolationTopic { get; set; } = "isolation_share_m";
    /// <summary>Regrow a lot when it germinates below so many per cent, of its own first test or in all, see <see cref="RegrowOfInitial"/>.</summary>
    public int RegrowBelowPercent { get; set; } = 85;
    /// <summary>True: per cent of the lot's own first test. False: per cent of the seeds.</summary>
    public bool RegrowOfInitial { get; set; } = true;
    /// <summary>Days after which a lot without a germination test is due for its first.</summary>
    public int FirstTestDays { get; set; } = 365;
    /// <summary>Days between germination tests where nothing can be forecast.</summary>
    public int TestEveryDays { get; set; } = 730;
    /// <summary>Days between stocktakes of a lot; 0 for none.</summary>
    public int RecountEveryDays { get; set; } = 730;
    /// <summary>Regrow a lot with fewer seeds left than this; 0 for no such rule.</summary>
    public int RegrowBelowSeeds { get; set; }
    /// <summary>How the stores are kept, one a line: "Freezer: 5 %, -18" for a seed moisture of 5 % at -18 degrees Celsius; empty where nobody measured.</summary>
    public string Stores { get; set; } = "";
    /// <summary>Hash of the one-time set-up code while no librarian exists; null after set-up.</summary>
    public string? SetUpCodeHash { get; set; }
    public DateTimeOffset? DemoLoadedAt { get; set; }
    public long Revision { get; set; }
}
