using LibraryDesk.Data.Settings;

namespace LibraryDesk.Web.Features.Settings;

/// <summary>The settings as the form posts them.</summary>
public sealed class SettingsForm
{
    public long Revision { get; set; }
    public string? Name { get; set; }
    public string? Tagline { get; set; }
    public string? CodePrefix { get; set; }
    public int OpinionsNeeded { get; set; }
    public bool SignUpOpen { get; set; }
    public int IntakeHoldDays { get; set; }
    public string? PublicAddress { get; set; }
    public string? SharingNotice { get; set; }
    public string? LocalRulesUrl { get; set; }
    public string? IsolationTopic { get; set; }
    public int RegrowBelowPercent { get; set; }
    public bool RegrowOfInitial { get; set; }
    public int FirstTestDays { get; set; }
    public int TestEveryDays { get; set; }
    public int RecountEveryDays { get; set; }
    public int RegrowBelowSeeds { get; set; }
    public string? Stores { get; set; }

    public static SettingsForm From(LibrarySettingsRow row) => new()
    {
        Revision = row.Revision,
        Name = row.Name,
        Tagline = row.Tagline,
        CodePrefix = row.CodePrefix,
        OpinionsNeeded = row.OpinionsNeeded,
        SignUpOpen = row.SignUpOpen,
        IntakeHoldDays = row.IntakeHoldDays,
        PublicAddress = row.PublicAddress,
        SharingNotice = row.SharingNotice,
        LocalRulesUrl = row.LocalRulesUrl,
        IsolationTopic = row.IsolationTopic,
        RegrowBelowPercent = row.RegrowBelowPercent,
        RegrowOfInitial = row.RegrowOfInitial,
        FirstTestDays = row.FirstTestDays,
        TestEveryDays = row.TestEveryDays,
        RecountEveryDays = row.RecountEveryDays,
        RegrowBelowSeeds = row.RegrowBelowSeeds,
        Stores = row.Stores,
    };

    public void WriteTo(LibrarySettingsRow row)
    {
        row.Name = Name?.Trim() ?? "";
        row.Tagline = Tagline?.Trim() ?? "";
        row.CodePrefix = CodePrefix?.Trim().ToUpperInvariant() ?? "";
        row.OpinionsNeeded = OpinionsNeeded;
        row.SignUpOpen = SignUpOpen;
        row.IntakeHoldDays = IntakeHoldDays;
        row.PublicAddress = PublicAddress?.Trim().TrimEnd('/') ?? "";
        row.SharingNotice = SharingNotice?.Trim() ?? "";
        row.LocalRulesUrl = LocalRulesUrl?.Trim() ?? "";
        row.IsolationTopic = IsolationTopic ?? "";
        row.RegrowBelowPercent = RegrowBelowPercent;
        row.RegrowOfInitial = RegrowOfInitial;
        row.FirstTestDays = FirstTestDays;
        row.TestEveryDays = TestEveryDays;
        row.RecountEveryDays = RecountEveryDays;
        row.RegrowBelowSeeds = RegrowBelowSeeds;
        row.Stores = Stores?.Trim() ?? "";
    }
}
