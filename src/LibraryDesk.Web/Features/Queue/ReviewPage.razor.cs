using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Lineage;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Queue.QueueText;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>One case on the review desk: look, score, seal, review, finish, next.</summary>
public sealed partial class ReviewPage(
    ReadReview read, ReadOutcome outcomes, ListReviews list, CurrentActor current, NavigationManager navigation,
    SealOpinion seal, FinishOpinion finish, AddSuggestion suggest, WithdrawSuggestion unsuggest, ScoreTrait score, ContestAnswer contest,
    TakeBackAnswer takeBack, AskForLook ask, WithdrawLookRequest unask, DetermineAlone alone)
{
    private const int RailLength = 8;

    private Actor _actor = Actor.Visitor;
    private ReviewView? _view;
    private OutcomeView? _outcome;
    private string? _refused;
    private IReadOnlyList<QueueLine> _rail = [];
    private long? _next;
    private IReadOnlyList<FormFault> _faults = [];
    private Dictionary<string, string> _errors = [];
    private Dictionary<string, string> _aloneErrors = [];
    private Trait? _scored;
    private IReadOnlyCollection<string> _scoredStates = [];
    private AnswerSeen? _scoredMine;

    /// <summary>The case's number.</summary>
    [Parameter] public long Id { get; set; }

    [CascadingParameter] private HttpContext? Http { get; set; }

    [SupplyParameterFromQuery] private int? Photo { get; set; }
    [SupplyParameterFromQuery] private string? A { get; set; }
    [SupplyParameterFromQuery] private string? B { get; set; }
    [SupplyParameterFromQuery(Name = "score")] private string? ScoreTraitId { get; set; }
    [SupplyParameterFromQuery] private long? Contest { get; set; }
    [SupplyParameterFromQuery] private string? Done { get; set; }

    [SupplyParameterFromForm(FormName = "opinion")] private OpinionFields? Opinion { get; set; }
    [SupplyParameterFromForm(FormName = "finish")] private FinishFields? Finish { get; set; }
    [SupplyParameterFromForm(FormName = "score")] private ScoreFields? Score { get; set; }
    [SupplyParameterFromForm(FormName = "suggest")] private SuggestionFields? Suggest { get; set; }
    [SupplyParameterFromForm(FormName = "look")] private LookFields? Look { get; set; }
    [SupplyParameterFromForm(FormName = "alone")] private AloneFields? Alone { get; set; }

    private CropGuide Guide => _view!.Guide.Guide;

    private string NextHref => _next is { } next ? FormattableString.Invariant($"/queue/{next}") : "/queue";

    private string NextWords => _next is null ? Say["Back to the queue"] : Say["Next case"];

    private string? DoneWords => Done switch
    {
        "sealed" => Say["Your opinion is sealed. The odds, the reasons and the suggestions are open to you now: review, then finish."],
        "finished" => Say["Your review is finished. The case waits for others. The next one is under the form."],
        "wanted" => Say["Your review is finished. One more person will look at it. The next case is under the form."],
        "determined" => Say["Your review is finished, and with it the case is determined. Its owner gets a letter."],
        "scored" => Say["Your score is kept."],
        "contested" => Say["Your score stands beside the other now, and the odds take both."],
        "taken-back" => Say["Your score is taken back."],
        "suggested" => Say["Your suggestion is added."],
        "unsuggested" => Say["Your suggestion is withdrawn."],
        "asked" => Say["The member is asked, by letter. The case waits for the look; opinions are still taken."],
        "unasked" => Say["The request is withdrawn."],
        _ => null,
    };

    protected override async Task OnParametersSetAsync()
    {
        _actor = await current.GetAsync();
        await LoadAsync();
    }

    // The view is set last: the page is drawn at every wait, and with a view it needs the forms too.
    private async Task LoadAsync()
    {
        var asked = await read.RunAsync(_actor, Id, default);
        if ((await list.ReadAsync(_actor, default)).TryGet(out var queue, out _))
        {
            var mine = QueueOrder.ByHelp(queue.Lines).Where(line => line.Mine != MyPart.Finished || line.CaseId == Id).ToList();
            _rail = [.. mine.Take(RailLength)];
            _next = mine.Find(line => line.CaseId != Id && line.Mine != MyPart.Finished)?.CaseId;
        }
        if (!asked.TryGet(out var view, out var no))
        {
            (_view, _refused) = (null, RefusalText.Say[no]);
            return;
        }
        if (!view.IsOpen && (await outcomes.RunAsync(_actor, Id, default)).TryGet(out var became, out _)) _outcome = became;
        Opinion ??= new();
        Suggest ??= new();
        Look ??= new();
        Alone ??= new();
        Finish ??= Standing(view.Mine);
        // A refused form keeps what was typed, but has to name the revision that is now in sight.
        Finish.Revision = _faults.Count > 0 && view.Mine is { } mine2 ? mine2.Revision : Finish.Revision;
        PrepareScore(view);
        _view = view;
    }

    private static FinishFields Standing(OpinionSeen? mine)
    {
        if (mine is null) return new();
        var view = mine.Final ?? mine.Sealed;
        return new() { Revision = mine.Revision, Taxon = view.Taxon, Qualifier = view.Qualifier, Note = mine.FinalNote };
    }

    private void PrepareScore(ReviewView view)
    {
        _scored = view.Guide.Guide.FindTrait(Score?.TraitId ?? ScoreTraitId ?? "");
        if (_scored is null || view.Looks.Count == 0) return;
        _scoredMine = view.Answers.LastOrDefault(a => a.By == Scorer.Me && a.Row.TraitId == _scored.Id);
        if (Score is not null)
        {
            _scoredStates = PostedStates();
            return;
        }
        var stands = _scoredMine?.Row;
        Score = new ScoreFields
        {
            TraitId = _scored.Id,
            LookId = stands?.LookId ?? view.Looks[^1].Id,
            Contests = Contest,
            Low = Number(stands?.Low),
            High = stands?.High == stands?.Low ? null : Number(stands?.High),
            Sureness = stands?.Sureness,
        };
        _scoredStates = stands?.States.Split('|') ?? [];
    }

    private Task SealAsync() =>
        ThenAsync(async () => await seal.RunAsync(_actor, Id, Opinion!.Written, default), _ => "sealed", OpinionField);

    private Task FinishAsync() => ThenAsync(
        async () => await finish.RunAsync(_actor, Id, Finish!.Revision, Finish.Named, Finish.Note, default),
        decision => decision switch { Determined => "determined", AnotherWanted => "wanted", _ => "finished" },
        code => code == ReviewRefusals.NoteTooLongCode ? "finish-note" : code == ReviewRefusals.ChangedMeanwhileCode ? null : "finish-taxon");

    private Task ScoreAsync()
    {
        var measured = _scored?.Kind == TraitKind.Measured;
        var given = Score!.Given(measured, _scored?.Unit, [.. PostedStates()]);
        return ThenAsync(
            async () => Score.Contests is { } contested
                ? await contest.RunAsync(_actor, Id, contested, given, default)
                : await score.RunAsync(_actor, Id, Score.LookId, given, default),
            _ => Score.Contests is null ? "scored" : "contested",
            code => code == SaveAnswer.AnswerCode ? "score-low" : null,
            "scores");
    }

    private Task TakeBackScoreAsync(long answer) =>
        ThenAsync(async () => await takeBack.TakeBackAsync(_actor, Id, answer, default), _ => "taken-back", _ => null, "scores");

    private Task AddSuggestionAsync() => ThenAsync(
        async () => await suggest.RunAsync(_actor, Id, new SuggestionWritten(Suggest!.Taxon ?? "", null, Suggest.Variety, Suggest.Reason), default),
        _ => "suggested",
        SuggestForm.FieldOf,
        "suggestions");

    private Task WithdrawSuggestionAsync(long id) =>
        ThenAsync(async () => await unsuggest.RunAsync(_actor, Id, id, default), _ => "unsuggested", _ => null, "suggestions");

    private Task AskAsync() => ThenAsync(
        async () => await ask.RunAsync(_actor, Id, Look!.Wanted, default),
        _ => "asked",
        code => code == ReviewRefusals.NoteTooLongCode ? "look-message" : code is ReviewRefusals.NothingAskedCode or ReviewRefusals.NeverAskedCode ? "look-what" : null,
        "look");

    private Task WithdrawLookAsync(long id) =>
        ThenAsync(async () => await unask.RunAsync(_actor, Id, id, default), _ => "unasked", _ => null, "look");

    private async Task DetermineAloneAsync()
    {
        await ThenAsync(async () => await alone.RunAsync(_actor, Id, Alone!.Asked, default), _ => "determined", AloneField);
        _aloneErrors = _errors;
    }

    private static string? OpinionField(string code) => code switch
    {
        ReviewRefusals.UnknownTaxonCode => "opinion-taxon",
        ReviewRefusals.UnknownQualifierCode => "opinion-qualifier",
        ReviewRefusals.OddsRangeCode => "in-twenty",
        ReviewRefusals.NoteTooLongCode => "opinion-note",
        _ => null,
    };

    private static string? AloneField(string code) => code switch
    {
        ReviewRefusals.UnknownTaxonCode or ReviewRefusals.UnknownQualifierCode => "alone-taxon",
        ReviewRefusals.GroundsMissingCode or ReviewRefusals.NoteTooLongCode => "alone-note",
        DeterminationRules.NotFromCaseCode or DeterminationRules.TraitsContradictCode => "alone-packet",
        DeterminationRules.NeedsOriginCode or DeterminationRules.NameNotClaimedCode or DeterminationRules.OtherSpeciesCode
            or DeterminationRules.AkinCode => "alone-variety",
        _ => null,
    };

    /// <summary>Goes on to the page that says what was done, or stays with the refusal and everything typed.</summary>
    private async Task ThenAsync<T>(Func<Task<Outcome<T>>> act, Func<T, string> done, Func<string, string?> fieldOf, string? place = null)
        where T : notnull
    {
        if ((await act()).TryGet(out var value, out var no))
        {
            navigation.NavigateTo($"/queue/{Id}?done={done(value)}" + (place is null ? null : $"#{place}"));
            return;
        }
        var field = fieldOf(no.Code);
        _faults = [new(field, no)];
        if (field is not null) _errors = new() { [field] = RefusalText.Say[no] };
        await LoadAsync();
    }

    private IReadOnlyCollection<string> PostedStates() =>
        Http?.Request.HasFormContentType == true ? [.. Http.Request.Form["Score.States"].OfType<string>()] : [];

    private string Here(int? photo = null) => $"/queue/{Id}?photo={photo ?? Photo ?? 1}&a={Uri.EscapeDataString(A ?? "")}&b={Uri.EscapeDataString(B ?? "")}";

    private string ScoreAddress(string trait, long? contested) =>
        FormattableString.Invariant($"{Here()}&score={Uri.EscapeDataString(trait)}{(contested is null ? "" : $"&contest={contested}")}#score");

    private string PartsOf(LookSeen look)
    {
        var names = Guide.Parts.Where(part => look.Parts.Contains(part.Id)).Select(part => part.Name.ToLowerInvariant()).ToList();
        return names.Count == 0 ? QueueWords.Lower(QueueWords.PartsNotSaid) : string.Join(", ", names);
    }

    private static string? Number(double? value) => value?.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
}
