using System.Globalization;
using LibraryDesk.Desk.Growing;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Web.Features.Lots;
using LibraryDesk.Web.Features.Scan;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Shared.Language;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Returns.ReturnsText;

namespace LibraryDesk.Web.Features.Returns;

/// <summary>Takes seed back from whoever grew it, with what they know of the growing; shows beforehand what it will make.</summary>
public sealed partial class NewReturnPage
{
    private Actor _actor = Actor.Visitor;
    private PacketView? _packet;
    private MemberLoan? _loan;
    private bool _isMine;
    private string _isolation = GrowingAdvice.DefaultIsolation;
    private IReadOnlyList<FormFault> _faults = [];

    [SupplyParameterFromQuery(Name = "packet")] private string? Packet { get; set; }

    [SupplyParameterFromQuery(Name = "loan")] private long? Loan { get; set; }

    [SupplyParameterFromForm(FormName = "return")] private ReturnForm? Form { get; set; }

    [Inject] private LibraryClock Clock { get; set; } = default!;

    private DateOnly Today => Clock.Today;

    protected override async Task OnInitializedAsync()
    {
        Form ??= new ReturnForm();
        _actor = await Current.GetAsync();
        _isolation = (await Settings.ReadAsync(default)).IsolationTopic;
        if (Loan is { } id)
        {
            if (!(await Loans.OneAsync(_actor, id, default)).TryGet(out _loan, out var noLoan)) _faults = [new("packet", noLoan)];
            else await OpenAsync(_loan.PacketCode);
        }
        else if (!string.IsNullOrWhiteSpace(Packet))
        {
            if (ScannedCode.Read(Packet, OwnHosts.Of(await Settings.ReadAsync(default), Navigation)).TryGet(out var scanned, out var no)) await OpenAsync(scanned.Text);
            else _faults = [new("packet", no)];
        }
    }

    private async Task OpenAsync(string code)
    {
        if (!(await Packets.ReadAsync(_actor, code, default)).TryGet(out _packet, out var no))
        {
            _faults = [new("packet", no)];
            return;
        }
        if (_loan is null)
        {
            var loans = _actor.IsLibrarian ? (await Loans.OpenAsync(_actor, default)).Match(read => read.Loans, _ => []) : await MineAsync();
            _loan = loans.FirstOrDefault(loan => loan.IsOpen && loan.PacketCode == _packet.Packet.Code.ToString());
        }
        _isMine = _loan is not null && _loan.BorrowerId == _actor.UserId;
    }

    private async Task<IReadOnlyList<MemberLoan>> MineAsync() =>
        _actor.UserId is { } me ? (await Loans.OfAsync(_actor, me, default)).Match(read => read.Loans, _ => []) : [];

    private async Task PostAsync()
    {
        var form = Form!;
        var isHandingIn = form.Step != "show";
        _faults = form.Faults(isHandingIn);
        if (!isHandingIn || _faults.Count > 0) return;

        Guid? by = null;
        if (_actor.IsLibrarian && _loan is null && !string.IsNullOrWhiteSpace(form.Who))
        {
            if (!(await People.OneAsync(_actor, form.Who, default)).TryGet(out var person, out var nobody))
            {
                _faults = [new("who", nobody)];
                return;
            }
            by = person.Id;
        }
        var brought = new SeedReturn(
            _packet!.Packet.Code.ToString(), AmountEntry.ReadDay(form.Sown), form.Facts, form.Seed!.Value, null, form.StakeStayed is true, null, form.Place, by, IsSure: form.IsSure);
        var outcome = await Return.RunAsync(_actor, brought, default);
        if (outcome.TryGet(out var returned, out var no)) Navigation.NavigateTo(string.Create(CultureInfo.InvariantCulture, $"/returns/taken/{returned.Lot}"));
        else _faults = [new(no.MayInsist ? "sure" : FieldOf(no), no)];
    }

    private RenderFragment OriginOf(PacketView packet)
    {
        var (code, lot) = (packet.Packet.Code, packet.Lot.Code);
        if (_loan is null) return Say.Linked($"`{code}`, from lot [{lot}](/lots/{lot})");
        var on = Dates.Day(_loan.LentOn);
        if (_loan.Borrower.Length > 0) return Say.Linked($"Lent to {_loan.Borrower} on {on} as `{code}`, from lot [{lot}](/lots/{lot})");
        return _isMine
            ? Say.Linked($"Lent to you on {on} as `{code}`, from lot [{lot}](/lots/{lot})")
            : Say.Linked($"Lent on {on} as `{code}`, from lot [{lot}](/lots/{lot})");
    }

    private static string? FieldOf(Refusal no) => no.Code switch
    {
        GrowingRules.PlantsCode => "seen",
        GrowingRules.FiguresCode => "grown",
        GrowingRules.HarvestDayCode => "harvested",
        SeedRefusals.NothingCode or SeedRefusals.TooMuchCode or SeedRefusals.SeedWeightCode => "amount",
        SeedRefusals.BeforeParentCode or SeedRefusals.FutureCode => "sown",
        _ => null,
    };

    private string? Fault(string field) => _faults.FirstOrDefault(fault => fault.FieldId == field)?.Message;
}
