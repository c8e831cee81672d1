using LibraryDesk.Data.Notices;
using LibraryDesk.Desk.Calendar;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Settings;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Notices.NoticesText;

namespace LibraryDesk.Web.Features.Notices;

/// <summary>A person's choices of what they are told, and their calendar address.</summary>
public sealed partial class NoticeChoicesPage
{
    private IReadOnlyDictionary<NoticeKind, NoticeWay> _ways = new Dictionary<NoticeKind, NoticeWay>();
    private IReadOnlyList<FormFault> _faults = [];
    private Actor _actor = Actor.Visitor;
    private DateTimeOffset? _made;
    private string? _link;
    private string? _done;

    [Inject] private NoticeChoices Choices { get; set; } = default!;
    [Inject] private CalendarLinks Links { get; set; } = default!;
    [Inject] private LibrarySettings Settings { get; set; } = default!;
    [Inject] private CurrentActor Current { get; set; } = default!;
    [CascadingParameter] private HttpContext? Http { get; set; }
    [SupplyParameterFromForm(FormName = "ways")] private Dictionary<string, string>? Ways { get; set; }

    private CancellationToken Stop => Http?.RequestAborted ?? default;

    protected override async Task OnInitializedAsync()
    {
        _actor = await Current.GetAsync();
        _ways = (await Choices.ReadAsync(_actor, Stop)).Match(list => list.Ways, _ => _ways);
        _made = (await Links.ReadAsync(_actor, Stop)).Match(state => state.MadeAt, _ => null);
    }

    private string WayOf(NoticeKind kind) => (_ways.TryGetValue(kind, out var way) ? way : NoticeChoices.DefaultFor(kind)).ToString();

    private async Task SaveAsync()
    {
        var wanted = new Dictionary<NoticeKind, NoticeWay>();
        foreach (var (kind, way) in Ways ?? [])
        {
            if (Enum.TryParse<NoticeKind>(kind, out var known) && Enum.TryParse<NoticeWay>(way, out var chosen)) wanted[known] = chosen;
        }
        var outcome = await Choices.ChangeAsync(_actor, wanted, Stop);
        if (outcome.Refusal is { } no)
        {
            _faults = [new(null, no)];
            return;
        }
        _ways = outcome.Match(list => list.Ways, _ => _ways);
        _done = Say["Your choices are kept."];
    }

    private async Task MakeAsync()
    {
        if (!(await Links.MakeAsync(_actor, Stop)).TryGet(out var key, out var no))
        {
            _faults = [new(null, no)];
            return;
        }
        var site = (await Settings.ReadAsync(Stop)).PublicAddress is { Length: > 0 } set ? set.TrimEnd('/') : $"{Http!.Request.Scheme}://{Http.Request.Host}";
        _link = $"{site}/calendar/{key}.ics";
        (await Links.ReadAsync(_actor, Stop)).TryGet(out var state, out _);
        _made = state?.MadeAt;
    }

    private async Task TakeBackAsync()
    {
        if ((await Links.TakeBackAsync(_actor, Stop)).Refusal is { } no)
        {
            _faults = [new(null, no)];
            return;
        }
        _made = null;
        _done = Say["The address is ended. Calendars that follow it find nothing any more."];
    }
}
