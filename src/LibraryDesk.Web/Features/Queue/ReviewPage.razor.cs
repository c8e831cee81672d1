using LibraryDesk.Data.Cases;
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
    TakeBackAnswer takeBack, AskForLook ask, WithdrawLookRequest unask, DetermineAlone alone, AddOriginClue clues)
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
    private IReadOnlyList<FormFault> _aloneFaults = [];
    private Trait? _scored;
    private IReadOnlyCollection<string> _scoredStates = [];
    private AnswerSeen? _scoredMine;
    private string? _faultHeading;
    private string? _late;

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
    [SupplyParameterFromForm(FormName = "origin-clue")] private string? OriginCode { get; set; }

    private CropGuide Guide => _view!.Guide.Guide;

    private string NextHref => _next is { } next ? FormattableString.Invariant($"/queue/{next}") : "/queue";

    private string NextWords => _next is null ? Say["Back to the queue"] : Say["Next case"];

    private bool IsScoring => _scored is not null && _view is { IsOpen: true };

    private (DonePlace Place, string Words)? DoneSaid => Done switch
    {
        "sealed" => (DonePlace.Odds, Say["Your opinion is sealed. The odds, the reasons and the suggestions are open to you now: review, then finish."]),
        "finished" => (DonePlace.Top, Say["Your review is finished. One more opinion is needed."]),
        "in-review" => (DonePlace.Top, Say["Your review is finished. Another volunteer has sealed an opinion and not finished the review yet; the case waits for that."]),
        "wanted" => (DonePlace.Top, Say["Your review is finished. One more person will look at it."]),
        "determined" => (DonePlace.Top, Say["Your review is finished, and with it the case is determined. Its owner gets a letter."]),
        "origin" => (DonePlace.Top, Say["The packet stands among the origin clues now."]),
        "alone" => (DonePlace.Top, Say["The case is determined, on your grounds. Its owner gets a letter."]),
        "scored" => (DonePlace.Scores, Say["Your score is kept."]),
        "contested" => (DonePlace.Scores, Say["Your score stands beside the other now, and the odds take both."]),
        "taken-back" => (DonePlace.Scores, Say["Your score is taken back."]),
        "suggested" => (DonePlace.Suggestions, Say["Your suggestion is added."]),
        "unsuggested" => (DonePlace.Suggestions, Say["Your suggestion is withdrawn."]),
        "asked" => (DonePlace.Look, Say["The member is asked, by letter. The case waits for the look; opinions are still taken."]),
        "unasked" => (DonePlace.Look, Say["The request is withdrawn."]),
        _ => null,
    };

    // What was done is said where it was done, unless something was refused since.
    private RenderFragment? DoneAt(DonePlace place) =>
        _faults.Count == 0 && DoneSaid is { } done && done.Place == place ? DoneNote(done.Words) : null;

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
        _late = LateForm(view);
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

    // A form that the page carried when it was opened, and no longer does: the case was decided or the opinion sealed meanwhile.
    private string? LateForm(ReviewView view)
    {
        if (Http?.Request is not { HasFormContentType: true } sent) return null;
        var name = sent.Form["_handler"].ToString();
        var gone = name switch
        {
            "opinion" => !view.IsOpen || view.Mine is not null,
            "finish" => !view.IsOpen || view.Mine is null,
            "score" or "unscore" or "suggest" or "look" or "alone" or "origin-clue" => !view.IsOpen,
            _ => false,
        };
        return gone ? name : null;
    }

    /// <summary>Says why a form came too late; what was chosen and written in it is not lost.</summary>
    private async Task SayLateAsync()
    {
        var sent = _late;
        if (sent == "opinion" && _view is { IsOpen: true, Mine: { } mine })
        {
            if (Opinion!.Named == mine.Sealed)
            {
                // The same sent twice: it is done.
                navigation.NavigateTo(Here() + "&done=sealed#odds");
                return;
            }
            _faults = [new("finish-taxon", Say[$"You had sealed {ReviewWords.Name(Guide, mine.Sealed)}. What you sent now stands in your review; finish with it if that is what you say."])];
            _faultHeading = Say["Your opinion was sealed already"];
            Finish = new() { Taxon = Opinion.Taxon, Other = Opinion.Other, Qualifier = Opinion.Qualifier, Note = Opinion.Note };
        }
        else
        {
            _faultHeading = Say["The case has moved on while this page was open"];
            _faults = [new(null, Say["What you sent was not taken. This is the case as it stands now."]), .. SentWords(sent).Select(words => new FormFault(null, words))];
        }
        await LoadAsync();
        _late = null;
    }

    private IEnumerable<string> SentWords(string? form)
    {
        (NamedTaxon? named, string? note) = form switch
        {
            "opinion" => (Opinion!.Named, Opinion.Note),
            "finish" => (Finish!.Named, Finish.Note),
            "alone" => (Alone!.Named, Alone.Note),
            "suggest" => (new NamedTaxon(Suggest!.Taxon ?? "", Qualifiers.None), Suggest.Reason),
            "look" => (default(NamedTaxon?), Look!.Message),
            _ => (default(NamedTaxon?), default(string)),
        };
        if (named is { Taxon.Length: > 0 } chosen) yield return Say[$"You had chosen: {ReviewWords.Name(Guide, chosen)}"];
        if (!string.IsNullOrWhiteSpace(note)) yield return Say[$"You had written: {note}"];
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
            LookId = stands?.LookId ?? (view.Looks.LastOrDefault(look => look.Parts.Contains(_scored.Part)) ?? view.Looks[^1]).Id,
            Contests = Contest,
            Low = Number(stands?.Low),
            High = stands?.High == stands?.Low ? null : Number(stands?.High),
            Sureness = stands?.Sureness,
        };
        _scoredStates = stands?.States.Split('|') ?? [];
    }

    private Task SealAsync() =>
        ThenAsync(async () => await seal.RunAsync(_actor, Id, Opinion!.Written, default), _ => "sealed", OpinionField, "odds");

    private Task FinishAsync() => ThenAsync(
        async () => await finish.RunAsync(_actor, Id, Finish!.Revision, Finish.Named, Finish.Note, default),
        decision => decision switch { Determined => "determined", AnotherWanted => "wanted", NotYet { InReview: > 0 } => "in-review", _ => "finished" },
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
        await ThenAsync(async () => await alone.RunAsync(_actor, Id, Alone!.Asked, default), _ => "alone", AloneField);
        _aloneErrors = _errors;
        _aloneFaults = _faults;
    }

    private async Task AddOriginAsync()
    {
        await ThenAsync(async () => await clues.AddAsync(_actor, Id, new NewOriginClue(OriginKind.Stake, OriginCode), default), _ => "origin", _ => "alone-clue", "alone");
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
        ReviewRefusals.AgainstTheTraitsCode => "alone-sure",
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
            navigation.NavigateTo(Here() + $"&done={done(value)}" + (place is null ? null : $"#{place}"));
            return;
        }
        var field = fieldOf(no.Code);
        _faults = [new(field, no)];
        if (field is not null) _errors = new() { [field] = RefusalText.Say[no] };
        await LoadAsync();
    }

    private IReadOnlyCollection<string> PostedStates() =>
        Http?.Request.HasFormContentType == true ? [.. Http.Request.Form["Score.States"].OfType<string>()] : [];

    // Photo, compared species and the score in hand stay when one of them changes.
    private string Here(int? photo = null, bool scoring = false) =>
        $"/queue/{Id}?photo={photo ?? Photo ?? 1}{Kept("a", A)}{Kept("b", B)}"
        + (scoring && IsScoring ? Kept("score", _scored!.Id) + Kept("contest", Score!.Contests?.ToString(System.Globalization.CultureInfo.InvariantCulture)) : null);

    private static string? Kept(string name, string? value) => string.IsNullOrEmpty(value) ? null : $"&{name}={Uri.EscapeDataString(value)}";

    private string ScoreAddress(string trait, long? contested) =>
        FormattableString.Invariant($"{Here()}&score={Uri.EscapeDataString(trait)}{(contested is null ? "" : $"&contest={contested}")}#score");

    private string PartsOf(LookSeen look)
    {
        var names = Guide.Parts.Where(part => look.Parts.Contains(part.Id)).Select(part => part.Name.ToLowerInvariant()).ToList();
        return names.Count == 0 ? QueueWords.Lower(QueueWords.PartsNotSaid) : string.Join(", ", names);
    }

    private static string? Number(double? value) => value?.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>Where on the page an act is answered.</summary>
internal enum DonePlace
{
    Top,
    Odds,
    Suggestions,
    Scores,
    Look,
}
