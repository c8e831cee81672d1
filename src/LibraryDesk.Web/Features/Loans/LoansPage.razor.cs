using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Web.Features.Lots;
using LibraryDesk.Web.Shared.Forms;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.Loans;

/// <summary>A member's own loans; for a librarian all that run, the requests that wait, and the form to lend.</summary>
public sealed partial class LoansPage
{
    private Actor _actor = Actor.Visitor;
    private IReadOnlyList<MemberLoan> _loans = [];
    private IReadOnlyList<WaitingRequest> _requests = [];
    private IReadOnlyList<FormFault> _faults = [];

    [SupplyParameterFromQuery(Name = "packet")] private string? Packet { get; set; }

    [SupplyParameterFromQuery(Name = "request")] private long? Request { get; set; }

    [SupplyParameterFromQuery(Name = "done")] private string? Done { get; set; }

    [SupplyParameterFromForm(FormName = "lend")] private LendForm? Form { get; set; }

    private string? DoneWords => Done switch
    {
        "lent" => "Lent.",
        "ended" => "The loan has ended. Thank you for telling.",
        _ => null,
    };

    protected override async Task OnInitializedAsync()
    {
        _actor = await Current.GetAsync();
        Form ??= new LendForm { Packet = Packet };
        if (_actor.IsLibrarian)
        {
            _loans = (await Loans.OpenAsync(_actor, default)).Match(read => read.Loans, _ => []);
            _requests = (await Requests.ReadAsync(_actor, default)).Match(read => read.Requests, _ => []);
            await FillFromRequestAsync();
        }
        else if (_actor.UserId is { } me)
        {
            _loans = (await Loans.OfAsync(_actor, me, default)).Match(read => read.Loans, _ => []);
        }
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
        if (!(await PersonAsync(form.Who)).TryGet(out var person, out var nobody))
        {
            _faults = [new("who", nobody.Message)];
            return;
        }
        var request = long.TryParse(form.Request, NumberStyles.None, CultureInfo.InvariantCulture, out var asked) ? asked : (long?)null;
        var outcome = await Lend.RunAsync(_actor, new Handover(form.Packet, person.Id, null, AmountEntry.ReadDay(form.Due), request), default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo("/loans?done=lent");
        else _faults = [new(no.Code == LendingRules.DueBeforeLentCode ? "due" : "packet", no.Message)];
    }

    private async Task EndAsync(LoanEnd end)
    {
        var outcome = await End.RunAsync(_actor, end.LoanId, end.Ending, null, default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo("/loans?done=ended");
        else _faults = [new(null, no.Message)];
    }

    // One person, by address or by name; two of a name are told apart by their addresses.
    private async Task<Outcome<PersonView>> PersonAsync(string? who)
    {
        if (string.IsNullOrWhiteSpace(who)) return new Refusal("loan.who", "Say who takes the packet: their e-mail address, or part of their name.");
        if (!(await People.FindAsync(_actor, who, default)).TryGet(out var found, out var no)) return no;
        var standing = found.Where(person => !person.Erased).ToArray();
        var exact = standing.Where(person => string.Equals(person.Email, who.Trim(), StringComparison.OrdinalIgnoreCase) || string.Equals(person.Name, who.Trim(), StringComparison.OrdinalIgnoreCase)).ToArray();
        return (exact.Length, standing.Length) switch
        {
            (1, _) => exact[0],
            (_, 1) => standing[0],
            (_, 0) => new Refusal("loan.who", "Nobody here goes by that. Ask them to sign up first, or check the spelling."),
            _ => new Refusal("loan.who", $"Several people go by that: {string.Join(", ", standing.Take(5).Select(person => person.Email))}. Give the e-mail address."),
        };
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

/// <summary>How a loan is said to have ended.</summary>
public sealed record LoanEnd(long LoanId, LoanEnding Ending);
