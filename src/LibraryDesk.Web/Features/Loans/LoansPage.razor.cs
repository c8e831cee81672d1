using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Web.Features.Lots;
using LibraryDesk.Web.Features.Scan;
using LibraryDesk.Web.Shared.Forms;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Loans.LoansText;

namespace LibraryDesk.Web.Features.Loans;

/// <summary>A member's own loans; for a librarian all that run, the requests that wait, and the form to lend.</summary>
public sealed partial class LoansPage
{
    /// <summary>Why an entry is undone here, as the ledger keeps it.</summary>
    internal const string UndoneAtCounter = "undone at the counter";

    private Actor _actor = Actor.Visitor;
    private IReadOnlyList<MemberLoan> _loans = [];
    private MemberLoan? _back;
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

    /// <summary>A packet that is out and was scanned.</summary>
    [SupplyParameterFromQuery(Name = "back")] private string? Back { get; set; }

    [SupplyParameterFromForm(FormName = "lend")] private LendForm? Form { get; set; }

    [SupplyParameterFromForm(FormName = "back")] private long? BackLoan { get; set; }

    private string? DoneWords => Done switch
    {
        "lent" => Form?.Who is { Length: > 0 } who ? Say[$"{Packet} is lent to {who}. Scan the next one."] : Say[$"{Packet} is lent. Scan the next one."],
        "undone" => Say["Undone. The ledger keeps both entries."],
        "unasked" => Say["It is off the list. Nobody puts a packet aside for it."],
        "ended" => Say["The loan has ended. Thank you for telling."],
        "back" => Say[$"{Packet} is back on the shelf. Scan the next one."],
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
            await FindBackAsync();
        }
        else if (_actor.UserId is { } me)
        {
            _loans = (await Loans.OfAsync(_actor, me, default)).Match(read => read.Loans, _ => []);
            _requests = (await Requests.MineAsync(_actor, default)).Match(read => read.Requests, _ => []);
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

    private async Task FindBackAsync()
    {
        if (BackLoan is { } posted) (await Loans.OneAsync(_actor, posted, default)).TryGet(out _back, out _);
        else if (Back is { Length: > 0 } code) (await Loans.OpenOfPacketAsync(_actor, code, default)).TryGet(out _back, out _);
    }

    private async Task TakeBackAsync()
    {
        if (_back is null) return;
        var outcome = await End.RunAsync(_actor, _back.LoanId, LoanEnding.BroughtBack, null, default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo($"/loans?done=back&packet={_back.PacketCode}");
        else _faults = [new(null, no)];
    }

    private async Task LendAsync()
    {
        var form = Form!;
        // A scanner that ends with two Enters asks for nothing: what was said last stands.
        if (string.IsNullOrWhiteSpace(form.Packet) && (Done ?? Back) is not null) return;
        if (!ScannedCode.Read(form.Packet, OwnHosts.Of(await Settings.ReadAsync(default), Navigation)).TryGet(out var scanned, out var unreadable))
        {
            _faults = [new("packet", unreadable)];
            return;
        }
        if (scanned.IsLot)
        {
            _faults = [new("packet", Say[$"{scanned.Text} is a lot. Lend one of its packets: scan the packet’s own code."])];
            return;
        }
        if ((await Loans.OpenOfPacketAsync(_actor, scanned.Text, default)).IsAllowed)
        {
            Navigation.NavigateTo($"/loans?back={scanned.Text}");
            return;
        }
        if (!string.IsNullOrWhiteSpace(form.Due) && AmountEntry.ReadDay(form.Due) is null)
        {
            _faults = [new("due", Say["Give the day as year, month and day, such as 2026-10-15, or leave it empty."])];
            return;
        }
        if (!(await People.OneAsync(_actor, form.Who, default)).TryGet(out var person, out var nobody))
        {
            _faults = [new("who", nobody)];
            return;
        }
        var request = long.TryParse(form.Request, NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? asked : KeptFor(person.Id, scanned.Text);
        var outcome = await Lend.RunAsync(_actor, new Handover(scanned.Text, person.Id, null, AmountEntry.ReadDay(form.Due), request), default);
        if (outcome.TryGet(out var lent, out var no)) Navigation.NavigateTo($"/loans?done=lent&packet={lent.PacketCode}&to={person.Id}");
        else _faults = [new(no.Code == LendingRules.DueBeforeLentCode ? "due" : "packet", no)];
    }

    // A packet kept for this person answers their request, also when nobody came here by way of it.
    private long? KeptFor(Guid person, string packet) => _requests.FirstOrDefault(request => request.ById == person && request.PickedCode == packet)?.Id;

    private async Task WithdrawAsync(long request)
    {
        var outcome = await Withdraw.RunAsync(_actor, request, default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo("/loans?done=unasked");
        else _faults = [new(null, no)];
    }

    private async Task UndoAsync(long sequence)
    {
        var outcome = await Correct.RunAsync(_actor, sequence, UndoneAtCounter, default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo("/loans?done=undone");
        else _faults = [new(null, no)];
    }

    // A code that was refused leaves the field to the next scan.
    private bool IsScanReady => _faults.All(fault => fault.FieldId == "packet");

    private string? Fault(string field) => _faults.FirstOrDefault(fault => fault.FieldId == field)?.Message;

    internal sealed class LendForm
    {
        public string? Packet { get; set; }
        public string? Who { get; set; }
        public string? Due { get; set; }
        public string? Request { get; set; }
    }
}
