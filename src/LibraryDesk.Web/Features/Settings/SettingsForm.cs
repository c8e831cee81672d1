using System.Globalization;
using LibraryDesk.Data.Settings;
using LibraryDesk.Web.Features.Lots;
using LibraryDesk.Web.Shared.Forms;
using static LibraryDesk.Web.Features.Settings.SettingsText;

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
    public string? IntakeHoldDays { get; set; }
    public string? LoanDays { get; set; }
    public string? TimeZone { get; set; }
    public string? PublicAddress { get; set; }
    public string? SharingNotice { get; set; }
    public string? LocalRulesUrl { get; set; }
    public string? IsolationTopic { get; set; }
    public string? RegrowBelowPercent { get; set; }
    public bool RegrowOfInitial { get; set; }
    public string? FirstTestDays { get; set; }
    public string? TestEveryDays { get; set; }
    public string? RecountEveryDays { get; set; }
    public string? RegrowBelowSeeds { get; set; }
    public string? Stores { get; set; }

    public static SettingsForm From(LibrarySettingsRow row) => new()
    {
        Revision = row.Revision,
        Name = row.Name,
        Tagline = row.Tagline,
        CodePrefix = row.CodePrefix,
        OpinionsNeeded = row.OpinionsNeeded,
        SignUpOpen = row.SignUpOpen,
        IntakeHoldDays = Text(row.IntakeHoldDays),
        LoanDays = Text(row.LoanDays),
        TimeZone = row.TimeZone,
        PublicAddress = row.PublicAddress,
        SharingNotice = row.SharingNotice,
        LocalRulesUrl = row.LocalRulesUrl,
        IsolationTopic = row.IsolationTopic,
        RegrowBelowPercent = Text(row.RegrowBelowPercent),
        RegrowOfInitial = row.RegrowOfInitial,
        FirstTestDays = Text(row.FirstTestDays),
        TestEveryDays = Text(row.TestEveryDays),
        RecountEveryDays = Text(row.RecountEveryDays),
        RegrowBelowSeeds = Text(row.RegrowBelowSeeds),
        Stores = row.Stores,
    };

    /// <summary>Numbers that cannot be read; none may be taken for 0, which switches a rule off.</summary>
    public IReadOnlyList<FormFault> Faults() =>
    [
        .. new[]
        {
            ("hold", IntakeHoldDays), ("loan", LoanDays), ("regrow", RegrowBelowPercent), ("least-seeds", RegrowBelowSeeds), ("first-test", FirstTestDays), ("test-every", TestEveryDays), ("recount", RecountEveryDays),
        }
        .Where(field => AmountEntry.ReadCount(field.Item2) is null).Select(field => new FormFault(field.Item1, Say["Give a whole number, such as 30."])),
    ];

    /// <summary>Writes what was typed into the settings; the numbers have to be readable, see <see cref="Faults"/>.</summary>
    public void WriteTo(LibrarySettingsRow row)
    {
        row.Name = Name?.Trim() ?? "";
        row.Tagline = Tagline?.Trim() ?? "";
        row.CodePrefix = CodePrefix?.Trim().ToUpperInvariant() ?? "";
        row.OpinionsNeeded = OpinionsNeeded;
        row.SignUpOpen = SignUpOpen;
        row.IntakeHoldDays = Number(IntakeHoldDays);
        row.LoanDays = Number(LoanDays);
        row.TimeZone = TimeZone ?? "";
        row.PublicAddress = PublicAddress?.Trim().TrimEnd('/') ?? "";
        row.SharingNotice = SharingNotice?.Trim() ?? "";
        row.LocalRulesUrl = LocalRulesUrl?.Trim() ?? "";
        row.IsolationTopic = IsolationTopic ?? "";
        row.RegrowBelowPercent = Number(RegrowBelowPercent);
        row.RegrowOfInitial = RegrowOfInitial;
        row.FirstTestDays = Number(FirstTestDays);
        row.TestEveryDays = Number(TestEveryDays);
        row.RecountEveryDays = Number(RecountEveryDays);
        row.RegrowBelowSeeds = Number(RegrowBelowSeeds);
        row.Stores = Stores?.Trim() ?? "";
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static int Number(string? typed) => AmountEntry.ReadCount(typed) ?? throw new InvalidOperationException("Faults() names what cannot be read.");
}
