using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Keeping;
using LibraryDesk.Desk.Seeds.Population;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Web.Features.SeedLineage;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Lots.LotsText;

namespace LibraryDesk.Web.Features.Lots;

/// <summary>A lot: where it came from, what was made of it, what it is called and why, what is left.</summary>
public sealed partial class LotPage
{
    private Actor _actor = Actor.Visitor;
    private LotView? _view;
    private LineageStory? _story;
    private Refusal? _no;
    private int _off;
    private double? _byPlants;
    private PopulationFacts? _population;
    private KeepingFacts? _keeping;
    private Neighbours? _neighbours;

    /// <summary>The lot's code.</summary>
    [Parameter, EditorRequired] public required string Code { get; set; }

    [SupplyParameterFromQuery(Name = "done")] private string? Done { get; set; }

    [CascadingParameter] private HttpContext? Http { get; set; }

    private Counted? Counted => _view!.History.Select(line => line.Act).OfType<Counted>().FirstOrDefault();

    // The deed is named in the address after the redirect, so that a reload does not do it again.
    private string? DoneWords => Done switch
    {
        "received" when _view!.Holds.Count > 0 => Say["Taken in, and held: packets can be put up once the hold is lifted, under Hold or release."],
        "received" => Say["Taken in. Next: put up packets, or claim a name."],
        "packed" => Say["The packets are put up. Their labels can be printed now."],
        "split" => Say["Split off. This is the new lot."],
        "blended" => Say["Blended. This is the new lot; it remembers each part’s share."],
        "moved" => Say["Moved."],
        "counted" when Counted is { } counted => counted.Found == counted.Expected ? Say[$"Counted: {SeedWords.Seed(counted.Found)}, as expected."] : Say[$"Counted: {SeedWords.Seed(counted.Found)} instead of {SeedWords.Seed(counted.Expected)}. The difference is on record, and can be undone below."],
        "named" => Say["The name claim is written beside the others."],
        "held" => Say["Held: nothing of it can be lent until the hold is lifted."],
        "released" => Say["The hold is lifted."],
        "tested" => Say["The test is on record."],
        "thrown" => Say["Thrown away, and on record."],
        "sent" => Say["Sent on, and on record."],
        "returned" => Say["Taken back. This is the new lot."],
        "corrected" => Say["Corrected by a new entry. The earlier one stays as it was."],
        _ => null,
    };

    protected override async Task OnParametersSetAsync()
    {
        _actor = await Current.GetAsync();
        if (!(await Show.ReadAsync(_actor, Code, default)).TryGet(out var view, out _no))
        {
            if (Http is { Response.HasStarted: false }) Http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }
        _story = new LineageStory(view.Lineage, view.Names, view.Lot.Id.Node, view.Plants);
        var settings = await Settings.ReadAsync(default);
        _population = PopulationFacts.Of(view.Lineage, view.Lot.Id.Node, view.Name.Species, settings.IsolationTopic);
        _keeping = KeepingFacts.Of(view.Lot, view.Tests, view.Name.Species, settings);
        if (_actor.IsLibrarian && _population.Growings.Count > 0) (await Beside.ReadAsync(_actor, [.. _population.Growings.Select(growing => growing.GrowOut.Id.Value)], default)).TryGet(out _neighbours, out _);
        _off = view.Plants.Count(plant => !_story.Fits(plant));
        _byPlants = _story.IsNameInDoubt ? await MixUps.NextSeedAsync(view.Lot.Id, null, default) : null;
        // Last: the page is drawn at every wait, and with a view it needs the rest too.
        _view = view;
    }
}
