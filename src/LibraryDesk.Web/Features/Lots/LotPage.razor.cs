using System.Globalization;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.Lots;

/// <summary>A lot: where it came from, what was made of it, what it is called and why, what is left.</summary>
public sealed partial class LotPage
{
    private Actor _actor = Actor.Visitor;
    private LotView? _view;
    private LineageStory? _story;
    private Refusal? _no;

    /// <summary>The lot's code.</summary>
    [Parameter, EditorRequired] public required string Code { get; set; }

    [SupplyParameterFromQuery(Name = "view")] private string? View { get; set; }

    [SupplyParameterFromQuery(Name = "open")] private string? Open { get; set; }

    [SupplyParameterFromQuery(Name = "done")] private string? Done { get; set; }

    [CascadingParameter] private HttpContext? Http { get; set; }

    // The deed is named in the address after the redirect, so that a reload does not do it again.
    private string? DoneWords => Done switch
    {
        "received" => "Taken in. Next: put up packets, or claim a name.",
        "packed" => "The packets are put up. Their labels can be printed now.",
        "split" => "Split off. This is the new lot.",
        "blended" => "Blended. This is the new lot; it remembers each part’s share.",
        "moved" => "Moved.",
        "counted" => "Counted. The difference is on record.",
        "named" => "The name claim is written beside the others.",
        "held" => "Held: nothing of it can be lent until the hold is lifted.",
        "released" => "The hold is lifted.",
        "tested" => "The test is on record.",
        "thrown" => "Thrown away, and on record.",
        "sent" => "Sent on, and on record.",
        "recalled" => "Recalled. The list of holders is below.",
        "returned" => "Taken back. This is the new lot.",
        "corrected" => "Corrected by a new entry. The earlier one stays as it was.",
        _ => null,
    };

    protected override async Task OnParametersSetAsync()
    {
        _actor = await Current.GetAsync();
        if (!(await Show.ReadAsync(_actor, Code, default)).TryGet(out _view, out _no))
        {
            if (Http is { Response.HasStarted: false }) Http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }
        _story = new LineageStory(_view.Lineage, _view.Names, _view.Lot.Id.Node, _view.Plants, Opened());
    }

    private HashSet<NodeId> Opened() =>
        [.. (Open ?? "").Split(',').Select(text => long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? new NodeId(id) : default)];
}
