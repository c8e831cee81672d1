using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Lineage;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Filing.FilingText;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>One question a screen: the best next one, or the one the address names.</summary>
public partial class AskPage
{
    private CaseView? _view;
    private Refusal? _no;
    private Actor _actor = Actor.Visitor;
    private Trait? _trait;
    private Trait? _after;
    private AnswerRow? _standing;
    private CaseRanking? _beforeAnswer;
    private string? _before;
    private int _open;
    private HashSet<string> _chosen = [];
    private IReadOnlyList<FormFault> _faults = [];

    /// <summary>The case.</summary>
    [Parameter] public long Id { get; set; }

    [SupplyParameterFromQuery(Name = "trait")] private string? TraitAsked { get; set; }

    /// <summary>The trait just answered, so that the page can say what that did.</summary>
    [SupplyParameterFromQuery(Name = "after")] private string? After { get; set; }

    [SupplyParameterFromForm(FormName = "answer")] private AnswerForm? Form { get; set; }

    [Inject] private ReadCase Cases { get; set; } = default!;
    [Inject] private SaveAnswer Act { get; set; } = default!;
    [Inject] private CurrentActor Who { get; set; } = default!;
    [Inject] private NavigationManager Navigation { get; set; } = default!;
    [CascadingParameter] private HttpContext? Http { get; set; }

    private CancellationToken Stop => Http?.RequestAborted ?? default;

    private int Put => _view!.Latest.Answers.Where(a => !a.ByDesk && a.TraitId != _trait?.Id).Select(a => a.TraitId).Distinct().Count();

    private string BackTo => _before is null ? $"/cases/{Id}/photos" : $"/cases/{Id}/ask?trait={Uri.EscapeDataString(_before)}";

    private string StopTo => _view!.Case.State == CaseState.Draft ? $"/cases/{Id}/origin" : $"/cases/{Id}";

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
        var open = Questioning.Open(_view);
        _trait = Asked(Form?.Trait ?? TraitAsked) ?? (open.Count > 0 ? _view.Guide.Guide.FindTrait(open[0].Trait) : null);
        if (_trait is null) return;
        _open = open.Count(look => look.Trait != _trait.Id) + 1;
        _before = Questioning.Before(_view, _trait.Id);
        _standing = Questioning.Standing(_view, _trait.Id);
        Form ??= Typed(_standing);
        _chosen = [.. Form.States ?? []];
        _after = Asked(After);
        if (_after is not null) _beforeAnswer = Without(_view, _after.Id);
    }

    // The list of descriptors that the question is after, and the publication it stands in.
    private IEnumerable<string> SourcesOfQuestion =>
        new[] { _trait!.Descriptor, _trait.Source is { } source ? _view!.Guide.Guide.FindSource(source)?.Citation : null }.OfType<string>().Where(words => words.Length > 0).Distinct();

    // What to expect, so that a slip of unit is seen before it is sent. Over all candidates: it must not point at one.
    private string? RangeHint
    {
        get
        {
            var ranges = _view!.Guide.Guide.Candidates.Select(c => _view.Guide.UsualRange(c.Id, null, _trait!.Id)).OfType<(double Low, double High)>().ToList();
            if (ranges.Count == 0) return null;
            var (low, high) = (ranges.Min(r => r.Low), ranges.Max(r => r.High));
            return Say[$"Most plants of this guide measure between {SignificantFigures.Round(low, 2):0.###} and {SignificantFigures.Round(high, 3):0.###} {Measures.Unit(_trait!.Unit, low, high)}."];
        }
    }

    private async Task SaveAsync()
    {
        if (_view is null || _trait is null) return;
        var given = Form!.Read(_trait);
        if (!given.TryGet(out var answer, out var no) || !(await Act.SaveAsync(_actor, Id, _view.Latest.Look.Id, answer, Stop)).TryGet(out _, out no))
        {
            _faults = [new(_trait.Kind == TraitKind.Measured ? "low" : "states", no)];
            return;
        }
        // "got" tells the device that the answer is kept, so that it need not keep it any longer.
        var trait = Uri.EscapeDataString(_trait.Id);
        var said = answer.Kind is AnswerKind.States or AnswerKind.Measure ? $"&after={trait}" : "";
        Navigation.NavigateTo($"/cases/{Id}/ask?got={trait}{said}");
    }

    private Trait? Asked(string? id) => id is not null && _view!.Guide.Guide.FindTrait(id) is { Asked: true } trait ? trait : null;

    private static RenderFragment? DrawingOf(State state) => state.Drawing is { } name ? Drawings.Named(name) : null;

    private static AnswerForm Typed(AnswerRow? row) => row is null ? new AnswerForm() : new AnswerForm
    {
        States = [.. row.States.Split('|', StringSplitOptions.RemoveEmptyEntries)],
        Low = row.Low?.ToString("0.###", CultureInfo.InvariantCulture),
        High = row.High == row.Low ? null : row.High?.ToString("0.###", CultureInfo.InvariantCulture),
        Sure = row.Sureness,
    };

    private static CaseRanking? Without(CaseView view, string trait) => view.Ranking is not { } now ? null : new CaseRanking(
        view.Case.Id,
        view.Guide,
        CaseEvidence.Of(view.Guide, view.Looks.SelectMany(l => l.Answers).Where(a => a.TraitId != trait || a.LookId != view.Latest.Look.Id || a.ByDesk)),
        now.Origin,
        now.Parts);
}
