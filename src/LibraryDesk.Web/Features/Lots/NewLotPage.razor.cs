using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Web.Features.SeedLineage;
using LibraryDesk.Web.Shared.Forms;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Lots.LotsText;

namespace LibraryDesk.Web.Features.Lots;

/// <summary>Takes seed in from a donor.</summary>
public sealed partial class NewLotPage
{
    private static (SeedSource Source, string Words)[] Sources =>
    [
        (SeedSource.Donor, Say["Handed over by somebody who grew it or knows where it came from"]),
        (SeedSource.SwapTable, Say["From a swap table: a label, and nobody to ask"]),
        (SeedSource.Trade, Say["Bought"]),
        (SeedSource.Library, Say["From another library"]),
        (SeedSource.Unknown, Say["Found, or nobody knows"]),
    ];

    private IReadOnlyList<FormFault> _faults = [];

    [SupplyParameterFromForm(FormName = "receive")] private ReceiveForm? Form { get; set; }

    protected override void OnInitialized() =>
        Form ??= new ReceiveForm { On = SeedWords.DayValue(Clock.Today) };

    private async Task ReceiveAsync()
    {
        var form = Form!;
        var today = Clock.Today;
        var faults = new List<FormFault>();
        if (!AmountEntry.Read(form.Amount, form.AmountUnit).TryGet(out var amount, out var noAmount)) faults.Add(new("amount", noAmount));
        if (!AmountEntry.ReadThousand(form.Thousand).TryGet(out var thousand, out var noThousand)) faults.Add(new("thousand", noThousand));
        if (!string.IsNullOrWhiteSpace(form.HarvestYear) && AmountEntry.ReadCount(form.HarvestYear) is not (>= 1900 and <= 9999)) faults.Add(new("harvest", Say["Give the year with four digits, such as 2025, or leave it empty."]));
        if (!string.IsNullOrWhiteSpace(form.On) && (AmountEntry.ReadDay(form.On) is not { } on || on > today)) faults.Add(new("on", Say["Give a day that is not in days to come."]));
        if (faults.Count > 0)
        {
            _faults = faults;
            return;
        }
        var donor = string.IsNullOrWhiteSpace(form.Donor) ? null : new DonorEntry(null, form.Donor, form.Contact);
        var offer = new SeedOffer(
            donor, form.Source, form.Species, form.Name, amount, thousand!.Milligrams, AmountEntry.ReadCount(form.HarvestYear), AmountEntry.ReadDay(form.On), form.Place);

        var outcome = await Receive.RunAsync(await Current.GetAsync(), offer, default);
        if (outcome.TryGet(out var received, out var no)) Navigation.NavigateTo($"/lots/{received.Lot}?done=received");
        else Refuse(FieldOf(no.Code), no);
    }

    private void Refuse(string? field, Refusal refusal) => _faults = [new(field, refusal)];

    private string? Fault(string field) => _faults.FirstOrDefault(fault => fault.FieldId == field)?.Message;

    private static string? FieldOf(string code) => code switch
    {
        ReceiveAccession.DonorNameCode => "donor",
        ReceivingRules.HarvestYearCode => "harvest",
        SeedRefusals.FutureCode or ReceivingRules.ReceivedDayCode => "on",
        SeedRefusals.NothingCode or SeedRefusals.TooMuchCode => "amount",
        SeedRefusals.TextLongCode or SeedRefusals.TextPersonalCode => "name",
        "seed.weight-wrong" => "thousand",
        _ => null,
    };

    internal sealed class ReceiveForm
    {
        public SeedSource Source { get; set; }
        public string? Donor { get; set; }
        public string? Contact { get; set; }
        public string? Name { get; set; }
        public string? Species { get; set; }
        public string? Amount { get; set; }
        public string? AmountUnit { get; set; }
        public string? Thousand { get; set; }
        public string? HarvestYear { get; set; }
        public string? On { get; set; }
        public string? Place { get; set; }
    }
}
