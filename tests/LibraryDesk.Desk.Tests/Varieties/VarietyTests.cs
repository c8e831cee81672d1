using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.Desk.Varieties;
using LibraryDesk.Identification.Odds;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Varieties;

public sealed class VarietyTests
{
    [Theory, OnBoth]
    public async Task A_record_shows_its_traits_and_the_lots_of_its_name(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync("Tollkeeper")).Lot.ToString()!;
        var row = (await library.Act<DescribeVariety>().RunAsync(ASeedLibrary.Librarian, Tollkeeper("absent"), null, default)).Allowed();
        var view = (await library.Act<ReadVarieties>().OneAsync(row.Id, default)).Allowed();
        Assert.Equal([("corolla_spots", "absent")], view.Traits);
        Assert.Equal([lot], view.Lots);
        Assert.Equal(1, (await library.Act<ReadVarieties>().ListAsync(null, 1, default)).Varieties.Single().Lots);
    }

    [Theory, OnBoth]
    public async Task Names_fit_a_case_or_do_not_by_what_was_seen(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        (await scene.Library.Act<DescribeVariety>().RunAsync(ASeedLibrary.Librarian, Tollkeeper("absent"), null, default)).Allowed();
        var fits = (await scene.Library.Act<FitVarieties>().OfAsync(
            scene.Owner, scene.CaseId, [new GoesBy("Tollkeeper", ReviewScene.Annuum), new GoesBy("Lamp", ReviewScene.Baccatum), new GoesBy("Nameless", null)], default)).Allowed();
        Assert.Equal(Fit.Fits, fits.ByName[new GoesBy("Tollkeeper", ReviewScene.Annuum)]);
        Assert.NotEqual(Fit.Fits, fits.ByName[new GoesBy("Lamp", ReviewScene.Baccatum)]);
        Assert.DoesNotContain(new GoesBy("Nameless", null), fits.ByName.Keys);
    }

    [Theory, OnBoth]
    public async Task Who_may_not_see_a_case_is_not_told_what_fits_it(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        Assert.NotNull((await scene.Library.Act<FitVarieties>().OfAsync(ASeedLibrary.OtherMember, scene.CaseId, [new GoesBy("Tollkeeper", ReviewScene.Annuum)], default)).Refusal);
    }

    private static VarietyDescription Tollkeeper(string spots) =>
        new("Tollkeeper", ReviewScene.Annuum, BreedingStatus.OpenPollinated, [], null, [("corolla_spots", spots)], null);
}
