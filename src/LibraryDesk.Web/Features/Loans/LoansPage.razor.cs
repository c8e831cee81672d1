using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
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

    // In the address: the day was left empty, so it stays empty.
    private const string NoDay = "none";

    private Actor _actor = Actor.Visitor;
    private IReadOnlyList<MemberLoan> _loans = [];
    private int _out;
    private CounterBorrower? _borrower;
    private IReadOnlyList<PersonView> _several = [];
    private RecallNotice? _recall;
    private IReadOnlyList<LotCode> _home = [];
    private MemberLoan? _back;
    private IReadOnlyList<CounterLine> _day = [];
    private IReadOnlyList<WaitingRequest> _requests = [];
    private IReadOnlyList<FormFault> _faults = [];

    [SupplyParameterFromQuery(Name = "packet")] private string? Packet { get; set; }

    [SupplyParameterFromQuery(Name = "request")] private long? Request { get; set; }

    /// <summary>Who took the last packet, so that the next one needs a scan only.</summary>
    [SupplyParameterFromQuery(Name = "to")] private Guid? To { get; set; }

    [SupplyParameterFromQuery(Name = "q")] private string? Q { get; set; }

    /// <summary>The day typed for the last packet; it stays for the next.</summary>
    [SupplyParameterFromQuery(Name = "due")] private string? Due { get; set; }

    /// <summary>True to see overdue loans alone.</summary>
    [SupplyParameterFromQuery(Name = "late")] private bool Late { get; set; }

    [SupplyParameterFromQuery(Name = "page")] private int? Page { get; set; }

    [SupplyParameterFromQuery(Name = "done")] private string? Done { get; set; }

    /// <summary>The entry that was undone.</summary>
    [SupplyParameterFromQuery(Name = "entry")] private long? Entry { get; set; }

    /// <summary>A packet that is out and was scanned.</summary>
    [SupplyParameterFromQuery(Name = "back")] private string? Back { get; set; }

    [SupplyParameterFromForm(FormName = "lend")] private LendForm? Form { get; set; }

    [SupplyParameterFromForm(FormName = "back")] private long? BackLoan { get; set; }

    // The line of the day that was done last: it knows the packet, the person and whether it can be undone.
    private CounterLine? DoneLine => Done switch
    {
        "lent" => _day.FirstOrDefault(line => line.IsLending && !line.IsUndone && line.PacketCode == Packet),
        "back" => _day.FirstOrDefault(line => line.Ending == LoanEnding.BroughtBack && !line.IsUndone && line.PacketCode == Packet),
        "undone" => _day.FirstOrDefault(line => line.Sequence == Entry && line.IsUndone),
        _ => null,
    };

    private string? DoneWords => Done switch
    {
        "lent" => Say[$"{Packet} is lent. Scan the next one."],
        "undone" => Say["Undone. The ledger keeps both entries."],
        "unasked" => Say["It is off the list. Nobody puts a packet aside for it."],
        "ended" => Say["The loan has ended. Thank you for telling."],
        "back" => Say[$"{Packet} is back on the shelf. Scan the next one."],
        _ => null,
    };

    private int LentToday => _day.Count(line => line.IsLending && !line.IsUndone && line.PersonId == _borrower?.Id);

    private DateOnly Today => Clock.Today;

    protected override async Task OnInitializedAsync()
    {
        _actor = await Current.GetAsync();
        if (Form is null)
        {
            // The page is drawn once before the settings have come from the database.
            Form = new LendForm { Packet = Done is null ? Packet : null, Due = AmountEntry.ReadDay(Due) is null ? null : Due };
            if (_actor.IsLibrarian && Due is null && await Settings.ReadAsync(default) is { LoanDays: > 0 and var days }) Form.Due = Today.AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        }
        if (_actor.IsLibrarian)
        {
            await LoadCounterAsync();
            FillFromRequest();
            if ((Form!.Pick ?? To) is { } chosen) (await Borrowers.ReadAsync(_actor, chosen, default)).TryGet(out _borrower, out _);
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
        _out = all.Count;
        _loans = [.. all.Where(loan => Fits(loan, (Q ?? "").Trim()) && (!Late || loan.IsOverdueOn(Today)))];
        _day = (await Day.ReadAsync(_actor, default)).Match(read => read.Lines, _ => []);
        _requests = (await Requests.ReadAsync(_actor, default)).Match(read => read.Requests, _ => []);
    }

    private static bool Fits(MemberLoan loan, string asked) =>
        asked.Length == 0 || new[] { loan.PacketCode, loan.LotCode, loan.Variety, loan.Borrower }.Any(text => text?.Contains(asked, StringComparison.OrdinalIgnoreCase) == true);

    private void FillFromRequest()
    {
        if (_requests.FirstOrDefault(request => request.Id == Request) is not { } asked) return;
        Form!.Request ??= asked.Id.ToString(CultureInfo.InvariantCulture);
        Form.Packet ??= asked.PickedCode;
        To ??= asked.ById;
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
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo($"/loans?done=back&packet={_back.PacketCode}&to={To}");
        else _faults = [new(null, no)];
    }

    private async Task LendAsync()
    {
        var form = Form!;
        var hosts = OwnHosts.Of(await Settings.ReadAsync(default), Navigation);
        // The scanner wrote into the field for the person.
        if (string.IsNullOrWhiteSpace(form.Packet) && ScannedCode.Read(form.Who, hosts).IsAllowed) (form.Packet, form.Who) = (form.Who, null);
        if (string.IsNullOrWhiteSpace(form.Packet))
        {
            await ChooseAsync(form);
            return;
        }
        if (!ScannedCode.Read(form.Packet, hosts).TryGet(out var scanned, out var unreadable))
        {
            _faults = [AccessionCode.TryParse(form.Packet, out var accession, out _) ? await LotsOfAsync(accession.ToString(), unreadable) : new("packet", unreadable)];
            return;
        }
        if (scanned.IsLot)
        {
            _faults = [new("packet", Say[$"{scanned.Text} is a lot. Lend one of its packets: scan the packet’s own code."])];
            return;
        }
        if ((await Loans.OpenOfPacketAsync(_actor, scanned.Text, default)).IsAllowed)
        {
            Navigation.NavigateTo($"/loans?back={scanned.Text}&to={To}");
            return;
        }
        if (!string.IsNullOrWhiteSpace(form.Due) && AmountEntry.ReadDay(form.Due) is null)
        {
            _faults = [new("due", Say["Give the day as year, month and day, such as 2026-10-15, or leave it empty."])];
            return;
        }
        if (await WhoAsync(form) is not { } person) return;
        var request = long.TryParse(form.Request, NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? asked : KeptFor(person, scanned.Text);
        var outcome = await Lend.RunAsync(_actor, new Handover(scanned.Text, person, null, AmountEntry.ReadDay(form.Due), request), default);
        if (outcome.TryGet(out var lent, out var no)) Navigation.NavigateTo($"/loans?done=lent&packet={lent.PacketCode}&to={person}{KeptDay(form)}");
        else await RefuseAsync(scanned.Text, person, no);
    }

    // An accession's code is on no packet, but it says which lot to take one of.
    private async Task<FormFault> LotsOfAsync(string accession, Refusal unreadable)
    {
        var lots = (await Lots.FindAsync(_actor, accession, toLendOnly: false, 1, default)).Lots;
        return lots.Count == 0 ? new("packet", unreadable) : new("packet", Say[$"{accession} is seed as it came in, kept as lot {string.Join(", ", lots.Select(lot => lot.Code))}. Scan one of that lot’s packets."]);
    }

    // No packet yet: who was named is chosen, and the cursor goes on to the packet.
    private async Task ChooseAsync(LendForm form)
    {
        // A scanner that ends with two Enters asks for nothing: what was said last stands.
        if (string.IsNullOrWhiteSpace(form.Who) && (Done ?? Back) is not null) return;
        if (_borrower is not null && string.IsNullOrWhiteSpace(form.Who)) _faults = [new("packet", Say["Scan or type the code of a packet."])];
        else if (await WhoAsync(form) is { } person) Navigation.NavigateTo($"/loans?to={person}{KeptDay(form)}");
    }

    // Packets lent one after the other are due on one day.
    private static string KeptDay(LendForm form) => $"&due={(AmountEntry.ReadDay(form.Due) is null ? NoDay : form.Due)}";

    private async Task<Guid?> WhoAsync(LendForm form)
    {
        if (_borrower is { Id: var chosen }) return chosen;
        if (!(await People.MeantAsync(_actor, form.Who, default)).TryGet(out var meant, out var nobody)) _faults = [new("who", nobody)];
        else if (meant.Count == 1) return meant[0].Id;
        else (_several, _faults) = (meant, [new("who", Say["Several people go by that. Choose one of them."])]);
        return null;
    }

    private async Task RefuseAsync(string packet, Guid person, Refusal no)
    {
        if (_borrower is null) (await Borrowers.ReadAsync(_actor, person, default)).TryGet(out _borrower, out _);
        (await Show.ReadAsync(_actor, packet, default)).TryGet(out var view, out _);
        if (no.Code == SeedRefusals.OnHoldCode) _recall = view?.Recall;
        _home = view is { Packet.Standing: not PacketStanding.OnShelf } ? view.CameHomeAs : [];
        _faults = [_recall is not null
            ? new("packet", Say[$"This packet is called back: {_recall.Reason.TrimEnd('.')}. Keep it apart, and lend another."])
            : new(no.Code == LendingRules.DueBeforeLentCode ? "due" : "packet", no)];
    }

    // A packet kept for this person answers their request, also when nobody came here by way of it.
    private long? KeptFor(Guid person, string packet) => _requests.FirstOrDefault(request => request.ById == person && request.PickedCode == packet)?.Id;

    private async Task WithdrawAsync(long request)
    {
        var outcome = await Withdraw.RunAsync(_actor, request, default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo($"/loans?done=unasked&to={To}");
        else _faults = [new(null, no)];
    }

    private async Task UndoAsync(long sequence)
    {
        var outcome = await Correct.RunAsync(_actor, sequence, UndoneAtCounter, default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo(string.Create(CultureInfo.InvariantCulture, $"/loans?done=undone&entry={sequence}&to={To}"));
        else _faults = [new(null, no)];
    }

    // The cursor waits for the person while nobody is chosen, then for the packet. What was refused is marked, so that the next name or scan takes its place.
    private bool IsWhoReady => _borrower is null && _back is null && _faults.All(fault => fault.FieldId == "who");

    private bool IsScanReady => !IsWhoReady && _faults.All(fault => fault.FieldId == "packet");

    // What is wrong stands at its field; on top it is enough to say where.
    private IReadOnlyList<FormFault> Briefly => [.. _faults.Select(fault => fault.FieldId switch
    {
        "who" => fault with { Message = Say["Who takes it?"] },
        "packet" => fault with { Message = Say["Packet"] },
        "due" => fault with { Message = Say["Seed hoped for by"] },
        _ => fault,
    })];

    private string? Fault(string field) => _faults.FirstOrDefault(fault => fault.FieldId == field)?.Message;

    internal sealed class LendForm
    {
        public string? Packet { get; set; }
        public string? Who { get; set; }
        public Guid? Pick { get; set; }
        public string? Due { get; set; }
        public string? Request { get; set; }
    }
}
