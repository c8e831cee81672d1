using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Desk.Words;
using LibraryDesk.Web.Features.Scan;
using LibraryDesk.Web.Features.SeedLineage;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Labels.LabelsText;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>Chooses what is printed and on which paper. The print itself is a document of its own.</summary>
public sealed partial class LabelsPage(ReadLabels read, LibrarySettings settings, CurrentActor current, NavigationManager navigation)
{
    private static IReadOnlyList<Choice> Formats => [.. LabelFormat.All.Select(format => new Choice(format.Id, format.Name))];
    private static IReadOnlyList<Choice> StakeChoices => [new("packet", Say["One for each packet"]), new("lot", Say["One for each lot, with the lot’s code"]), new("none", Say["None"])];
    private static IReadOnlyList<Choice> Treatments => [new("", Say["Treatment not stated"]), new("no", Say["Seed not treated"])];
    private static IReadOnlyList<Choice> Marks => [new("", Say["Print it where the last test is under a listed minimum"]), new("no", Say["Don’t print it"])];

    private static readonly char[] Between = [' ', ',', ';', '\t', '\r', '\n'];

    private readonly LabelWish _wish = LabelWish.Read(null, null, null, null, null, null, null, null);
    private IReadOnlyList<SeedLabel> _labels = [];
    private IReadOnlyList<FormFault> _faults = [];
    private LibrarySettingsRow _settings = new();

    private NavigationManager Navigation => navigation;

    [SupplyParameterFromQuery(Name = "lot")] private string? Lot { get; set; }

    [SupplyParameterFromQuery(Name = "paste")] private string? Paste { get; set; }

    private bool IsToday => string.IsNullOrWhiteSpace(Lot) && string.IsNullOrWhiteSpace(Paste);

    private string Chosen => Say.Count(_labels.Count, $"Which ones? {_labels.Count} label", $"Which ones? {_labels.Count} labels");

    protected override async Task OnParametersSetAsync()
    {
        var actor = await current.GetAsync();
        _settings = await settings.ReadAsync(default);
        var faults = new List<FormFault>();
        var labels = new List<SeedLabel>();
        if (IsToday && (await read.OfTodayAsync(actor, default)).TryGet(out var today, out _)) labels.AddRange(today.Labels);
        if (!string.IsNullOrWhiteSpace(Lot))
        {
            if ((await read.OfLotAsync(actor, Lot, default)).TryGet(out var ofLot, out var no)) labels.AddRange(ofLot.Labels);
            else faults.Add(new("lot", no));
        }
        if (!string.IsNullOrWhiteSpace(Paste)) await AddPastedAsync(labels, faults);
        _labels = [.. labels.DistinctBy(label => label.Code).Take(ReadLabels.Most)];
        _faults = faults;
    }

    private async Task AddPastedAsync(List<SeedLabel> labels, List<FormFault> faults)
    {
        var readable = new List<string>();
        foreach (var typed in Paste!.Split(Between, StringSplitOptions.RemoveEmptyEntries).Take(ReadLabels.Most))
        {
            if (ScannedCode.Read(typed, OwnHosts.Of(_settings, navigation)).TryGet(out var code, out var no)) readable.Add(code.Text);
            else faults.Add(new("paste", $"{typed}: {RefusalText.Say[no]}"));
        }
        if ((await read.ByCodeAsync(await current.GetAsync(), readable, default)).TryGet(out var found, out _))
        {
            labels.AddRange(found.Labels);
            faults.AddRange(found.Missing.Select(code => new FormFault("paste", Say[$"There is no {code} in this library. Compare the code with the packet."])));
        }
    }

    private static string Second(SeedLabel label)
    {
        var words = label.IsLot
            ? Say[$"{SeedWords.Seed(label.Seed)}, made {SeedWords.Day(label.PackedOn)}"]
            : Say[$"{SeedWords.Seed(label.Seed)}, lot {label.LotCode}, put up {SeedWords.Day(label.PackedOn)}"];
        return label.Holds.Count == 0 ? words : Say[$"{words}. Held: {string.Join(", ", label.Holds.Select(SeedWords.Reason))}"];
    }
}
