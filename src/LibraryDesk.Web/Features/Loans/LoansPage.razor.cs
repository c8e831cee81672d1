using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Web.Features.Lots;
using LibraryDesk.Web.Features.Scan;
using LibraryDesk.Web.Shared.Forms;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.Loans;

/// <summary>A member's own loans; for a librarian all that run, the requests that wait, and the form to lend.</summary>
public sealed partial class LoansPage
{
    private Actor _actor = Actor.Visitor;
    private IReadOnlyList<MemberLoan> _loans = [];
    private IReadOnlyList<CounterLine> _day = [];
    private IReadOnlyList<WaitingRequest> _requests = [];
    private IReadOnlyList<FormFault> _faults = [];

    [SupplyParameterFromQuery(Name = "packet")] private string? Packet { get; set; }

    [SupplyParameterFromQuery(Name = "request")] private long? Request { get; set; }

    /// <summary>Who took the last packet, so that the next one needs a scan only.</summary>
    [SupplyParameterFromQuery(Name = "to")] private Guid? To { get; set; }

    [SupplyParameterFromQuery(Name = "q")] private string? Q { get; set; }

    [SupplyParameterFromQuery(Name = "page")] private int? Page { get; set; }

    [SupplyParameterFromQuery(Name = "done")] private string? Done { get; set; }

    [SupplyParameterFromForm(FormName = "lend")] private LendForm? Form { get; set; }

    private string? DoneWords => Done switch
    {
        "lent" => $"{Packet} is lent{(Form?.Who is { Length: > 0 } who ? $" to {who}" : "")}. Scan the next one.",
        "undone" => "Undone. The ledger keeps both entries.",
        "ended" => "The loan has ended. Thank you for telling.",
        _ => null,
    };

    private DateOnly Today => DateOnly.FromDateTime(Clock.GetUtcNow().UtcDateTime);

    protected override async Task OnInitializedAsync()
    {
        _actor = await Current.GetAsync();
        Form ??= new LendForm { Packet = Done is null ? Packet : null };
        if (_actor.IsLibrarian)
        {
            await LoadCounterAsync();
            await FillWhoAsync();
            await FillFromRequestAsync();
        }
        else if (_actor.UserId is { } me)
        {
            _loans = (await Loans.OfAsync(_actor, me, default)).Match(read => read.Loans, _ => []);
        }
    }

    private async Task LoadCounterAsync()
    {
        var all = (await Loans.OpenAsync(_actor, default)).Match(read => read.Loans, _ => []);
        _loans = [.. all.Where(loan => Fits(loan, (Q ?? "").Trim()))];
        _day = (await Day.ReadAsync(_actor, default)).Match(read => read.Lines, _ => []);
        _requests = (await Requests.ReadAsync(_actor, default)).Match(read => read.Requests, _ => []);
    }

    private static bool Fits(MemberLoan loan, string asked) =>
        asked.Length == 0 || new[] { loan.PacketCode, loan.LotCode, loan.Variety, loan.Borrower }.Any(text => text?.Contains(asked, StringComparison.OrdinalIgnoreCase) == true);

    private async Task FillWhoAsync()
    {
        if (To is not { } last || Form!.Who is not null) return;
        var name = (await People.NamesAsync([last], default)).GetValueOrDefault(last);
        var found = (await People.FindAsync(_actor, name, default)).Match(people => people, _ => []);
        Form.Who = found.FirstOrDefault(person => person.Id == last)?.Email;
    }

    private async Task FillFromRequestAsync()
    {
        if (Form!.Who is not null || _requests.FirstOrDefault(request => request.Id == Request) is not { } asked) return;
        Form.Request = asked.Id.ToString(CultureInfo.InvariantCulture);
        Form.Packet ??= asked.PickedCode;
        var person = (await People.FindAsync(_actor, asked.By, default)).Match(found => found, _ => []).FirstOrDefault(found => found.Id == asked.ById);
        Form.Who = person?.Email ?? asked.By;
    }

    private async Task LendAsync()
    {
        var form = Form!;
        if (!ScannedCode.Read(form.Packet, OwnHosts.Of(await Settings.ReadAsync(default), Navigation)).TryGet(out var scanned, out var unreadable))
        {
            _faults = [new("packet", unreadable.Message)];
            return;
        }
        if (scanned.IsLot)
        {
            _faults = [new("packet", $"{scanned.Text} is a lot. Lend one of its packets: scan the packet’s own code.")];
            return;
        }
        if (!(await People.OneAsync(_actor, form.Who, default)).TryGet(out var person, out var nobody))
        {
            _faults = [new("who", nobody.Message)];
            return;
        }
        var request = long.TryParse(form.Request, NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? asked : KeptFor(person.Id, scanned.Text);
        var outcome = await Lend.RunAsync(_actor, new Handover(scanned.Text, person.Id, null, AmountEntry.ReadDay(form.Due), request), default);
        if (outcome.TryGet(out var lent, out var no)) Navigation.NavigateTo($"/loans?done=lent&packet={lent.PacketCode}&to={person.Id}");
        else _faults = [new(no.Code == LendingRules.DueBeforeLentCode ? "due" : "packet", no.Message)];
    }

    // A packet kept for this person answers their request, also when nobody came here by way of it.
    private long? KeptFor(Guid person, string packet) => _requests.FirstOrDefault(request => request.ById == person && request.PickedCode == packet)?.Id;

    private async Task UndoAsync(long sequence)
    {
        var outcome = await Correct.RunAsync(_actor, sequence, "undone at the counter", default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo("/loans?done=undone");
        else _faults = [new(null, no.Message)];
    }

    private string? Fault(string field) => _faults.FirstOrDefault(fault => fault.FieldId == field)?.Message;

    internal sealed class LendForm
    {
        public string? Packet { get; set; }
        public string? Who { get; set; }
        public string? Due { get; set; }
        public string? Request { get; set; }
    }
}
