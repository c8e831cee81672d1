using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Filing.FilingText;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>Where the plant or its seed may come from; for a draft the last step before it is filed.</summary>
public partial class OriginPage
{
    private static (OriginKind Kind, string Words)[] Others =>
    [
        (OriginKind.Gift, Say["A gift"]),
        (OriginKind.Swap, Say["Swapped"]),
        (OriginKind.Bought, Say["Bought, as seed or plant"]),
        (OriginKind.SelfSown, Say["Self-sown"]),
    ];

    private CaseView? _view;
    private Refusal? _no;
    private Actor _actor = Actor.Visitor;
    private IReadOnlyList<MemberLoan> _loans = [];
    private IReadOnlyList<FormFault> _faults = [];

    /// <summary>The case.</summary>
    [Parameter] public long Id { get; set; }

    [SupplyParameterFromQuery(Name = "said")] private string? Code { get; set; }

    [SupplyParameterFromForm(FormName = "origin")] private OriginForm? Form { get; set; }

    [Inject] private ReadCase Cases { get; set; } = default!;
    [Inject] private AddOriginClue Clues { get; set; } = default!;
    [Inject] private FileCase FileAct { get; set; } = default!;
    [Inject] private MemberLoans Loans { get; set; } = default!;
    [Inject] private CurrentActor Who { get; set; } = default!;
    [Inject] private NavigationManager Navigation { get; set; } = default!;
    [CascadingParameter] private HttpContext? Http { get; set; }

    private CancellationToken Stop => Http?.RequestAborted ?? default;

    private bool IsEmptyDraft => _view!.Case.State == CaseState.Draft && _view.Looks.All(look => look.Photos.Count == 0)
        && !_view.OwnAnswers.Any(answer => answer.Kind is AnswerKind.States or AnswerKind.Measure);

    /// <inheritdoc />
    protected override async Task OnInitializedAsync()
    {
        _actor = await Who.GetAsync();
        if (!(await Cases.ReadAsync(_actor, Id, Stop)).TryGet(out _view, out _no)) return;
        if (!_view.MayChange)
        {
            _no = _view.SpeaksForOwner ? CaseRefusals.Finished : PeopleRefusals.NotYours;
            return;
        }
        // Before the next wait, at which the page is drawn.
        Form ??= Standing(_view);
        Form.Loans ??= [];
        Form.Others ??= [];
        if (_view.Case.OwnerId is { } owner && owner == _actor.UserId)
            _loans = [.. (await Loans.OfAsync(_actor, owner, Stop)).Match(list => list.Loans, _ => []).Where(MayBe)];
    }

    // A packet of another crop can't have given this plant, unless it was ticked before.
    private bool MayBe(MemberLoan loan) =>
        loan.Species is null || _view!.Guide.Guide.FindCandidate(loan.Species) is not null || Form!.Loans!.Contains(loan.PacketCode);

    private async Task SaveAsync()
    {
        var faults = new List<FormFault>();
        await TakeBackUntickedAsync();
        foreach (var code in Form!.Loans!) await AddAsync(new NewOriginClue(OriginKind.Loan, code), "loans", faults);
        if (!string.IsNullOrWhiteSpace(Form.Code)) await AddAsync(new NewOriginClue(OriginKind.Stake, Form.Code), "code", faults);
        foreach (var (kind, _) in Others.Where(o => Form.Others!.Contains(o.Kind.ToString()))) await AddAsync(new NewOriginClue(kind), "other", faults);
        if (!string.IsNullOrWhiteSpace(Form.Note)) await AddAsync(new NewOriginClue(OriginKind.Unknown, Note: Form.Note), "note", faults);
        if (faults.Count == 0 && Form.Then == "file" && (await FileAct.FileAsync(_actor, Id, Stop)).Refusal is { } no) faults.Add(new(null, no));
        _faults = faults;
        if (faults.Count == 0) Navigation.NavigateTo(Form.Then == "file" ? $"/cases/{Id}?said={CaseNotices.Filed}" : $"/cases/{Id}");
    }

    private async Task AddAsync(NewOriginClue clue, string field, List<FormFault> faults)
    {
        if ((await Clues.AddAsync(_actor, Id, clue, Stop)).Refusal is { } no) faults.Add(new(field, no));
    }

    private async Task TakeBackUntickedAsync()
    {
        foreach (var clue in _view!.Clues)
        {
            var stays = clue.Kind switch
            {
                OriginKind.Loan => Form!.Loans!.Contains(clue.PacketCode ?? ""),
                OriginKind.Stake => StakeStays(clue.PacketCode),
                OriginKind.Unknown => !string.IsNullOrWhiteSpace(Form!.Note),
                _ => Form!.Others!.Contains(clue.Kind.ToString()),
            };
            if (!stays) await Clues.TakeBackAsync(_actor, Id, clue.Id, Stop);
        }
    }

    // A code with a typo changes nothing yet: the form comes back with it.
    private bool StakeStays(string? code) =>
        !string.IsNullOrWhiteSpace(Form!.Code) && (!PacketCode.TryParse(Form.Code, out var typed, out _) || typed.ToString() == code);

    private static OriginForm Standing(CaseView view) => new()
    {
        Loans = [.. view.Clues.Where(c => c.Kind == OriginKind.Loan).Select(c => c.PacketCode!)],
        Others = [.. view.Clues.Select(c => c.Kind.ToString())],
        Code = view.Clues.LastOrDefault(c => c.Kind == OriginKind.Stake)?.PacketCode,
        Note = view.Clues.LastOrDefault(c => c.Kind == OriginKind.Unknown)?.Note,
    };

    private static string LoanNote(MemberLoan loan) => Say[$"lent {Dates.Day(loan.LentOn)}"];

    private string? ErrorOf(string field) => _faults.FirstOrDefault(fault => fault.FieldId == field)?.Message;
}
