using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Web.Features.Lots;
using LibraryDesk.Web.Shared.Forms;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.Returns;

/// <summary>Takes seed back from whoever grew it, with what they know of the growing.</summary>
public sealed partial class NewReturnPage
{
    private static readonly (Isolation Isolation, string Words)[] Ways =
    [
        (Isolation.Bagged, "Flowers or branches in bags"), (Isolation.Caged, "Plants under a cage or net"), (Isolation.HandPollinated, "Pollinated by hand, flowers kept closed"),
        (Isolation.Distance, "By distance"), (Isolation.Time, "It flowered at another time"), (Isolation.Open, "It wasn’t"), (Isolation.NotTold, "I don’t know"),
    ];

    private PacketView? _packet;
    private bool _isLibrarian;
    private IReadOnlyList<FormFault> _faults = [];

    [SupplyParameterFromQuery(Name = "packet")] private string? Packet { get; set; }

    [SupplyParameterFromForm(FormName = "return")] private ReturnForm? Form { get; set; }

    protected override async Task OnInitializedAsync()
    {
        Form ??= new ReturnForm();
        var actor = await Current.GetAsync();
        _isLibrarian = actor.IsLibrarian;
        if (string.IsNullOrWhiteSpace(Packet)) return;
        if (!(await Packets.ReadAsync(actor, Packet, default)).TryGet(out _packet, out var no)) _faults = [new("packet", no.Message)];
    }

    private async Task ReturnAsync()
    {
        var form = Form!;
        if (!AmountEntry.Read(form.Amount, form.AmountUnit).TryGet(out var seed, out var noAmount)) { _faults = [new("amount", noAmount.Message)]; return; }
        foreach (var (field, typed) in new[] { ("grown", form.Grown), ("saved", form.Saved), ("seen", form.Seen), ("removed", form.Removed), ("near", form.Near) })
        {
            if (string.IsNullOrWhiteSpace(typed) || AmountEntry.ReadCount(typed) is not null) continue;
            _faults = [new(field, "Give a whole number, or leave it empty when you don’t know.")];
            return;
        }
        var facts = new GrowOutFacts(
            AmountEntry.ReadCount(form.Grown), AmountEntry.ReadCount(form.Saved), AmountEntry.ReadCount(form.Seen), AmountEntry.ReadCount(form.Removed), form.Isolation,
            AmountEntry.ReadCount(form.Near), form.OthersFlowered switch { "yes" => true, "no" => false, _ => null }, form.Manner);

        var outcome = await Return.RunAsync(
            await Current.GetAsync(), new SeedReturn(Packet, AmountEntry.ReadDay(form.Sown), facts, seed, null, form.StakeStayed, null, form.Place), default);
        if (outcome.TryGet(out var returned, out var no)) Navigation.NavigateTo($"/lots/{returned.Lot}?done=returned");
        else _faults = [new(FieldOf(no), no.Message)];
    }

    private string? FieldOf(Refusal no) => no.Code switch
    {
        GrowingRules.PlantsCode => AmountEntry.ReadCount(Form!.Saved) > AmountEntry.ReadCount(Form.Grown) ? "saved" : "seen",
        SeedRefusals.NothingCode or SeedRefusals.SeedWeightCode => "amount",
        SeedRefusals.BeforeParentCode or SeedRefusals.FutureCode => "sown",
        _ => null,
    };

    private string? Fault(string field) => _faults.FirstOrDefault(fault => fault.FieldId == field)?.Message;

    internal sealed class ReturnForm
    {
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
        public bool StakeStayed { get; set; } = true;
        public string? Place { get; set; }
    }
}
