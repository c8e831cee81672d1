using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

public sealed class DescribeVarietyTests
{
    private static readonly Actor Librarian = Actor.Librarian(new Guid("11111111-1111-1111-1111-111111111111"));

    private static readonly VarietyDescription Lamp = new(
        "Ferryman's Lamp", "capsicum-baccatum", BreedingStatus.Landrace, ["Ferry Lamp"], "A lantern.", [("corolla_spots", "green-yellow")], null);

    [Theory, OnBoth]
    public async Task A_described_variety_is_kept_and_can_be_changed(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var first = await RunAsync(library, Librarian, Lamp, null);
        Assert.Null(first.Refusal);
        var changed = await RunAsync(library, Librarian, Lamp with { Breeding = BreedingStatus.OpenPollinated }, first.Match(row => row.Revision, _ => -1));
        Assert.Null(changed.Refusal);
        await using var db = await library.OpenAsync();
        var row = await db.Set<VarietyRow>().SingleAsync();
        Assert.Equal((BreedingStatus.OpenPollinated, "corolla_spots=green-yellow", "Ferry Lamp"), (row.Breeding, row.Traits, row.Synonyms));
    }

    [Theory, OnBoth]
    public async Task A_name_stands_once_in_a_species_whatever_its_case(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await RunAsync(library, Librarian, Lamp, null);
        Assert.Equal(DescribeVariety.ChangedMeanwhileCode, (await RunAsync(library, Librarian, Lamp with { Name = " FERRYMAN'S LAMP " }, null)).Refusal?.Code);
        Assert.Null((await RunAsync(library, Librarian, Lamp with { Species = "capsicum-annuum" }, null)).Refusal);
    }

    [Theory, OnBoth]
    public async Task What_the_guide_does_not_know_is_refused(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        Assert.Equal(DescribeVariety.SpeciesCode, (await RunAsync(library, Librarian, Lamp with { Species = "capsicum-imaginarium" }, null)).Refusal?.Code);
        Assert.Equal(DescribeVariety.TraitCode, (await RunAsync(library, Librarian, Lamp with { Traits = [("corolla_spots", "checked")] }, null)).Refusal?.Code);
        Assert.Equal(DescribeVariety.NameCode, (await RunAsync(library, Librarian, Lamp with { Name = " " }, null)).Refusal?.Code);
        Assert.Equal(DescribeVariety.TooLongCode, (await RunAsync(library, Librarian, Lamp with { Description = new string('x', 5000) }, null)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Only_a_librarian_says_what_a_name_means(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        Assert.Equal(PeopleRefusals.MayNotCode, (await RunAsync(library, Actor.Volunteer(Guid.NewGuid()), Lamp, null)).Refusal?.Code);
    }

    private static Task<Lineage.Outcome<VarietyRow>> RunAsync(TestLibrary library, Actor actor, VarietyDescription wanted, long? shown) =>
        library.Act<DescribeVariety>().RunAsync(actor, wanted, shown, CancellationToken.None);
}
