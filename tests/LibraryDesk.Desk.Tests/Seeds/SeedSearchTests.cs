using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

public sealed class SeedSearchTests
{
    [Theory, OnBoth]
    public async Task A_packet_is_found_by_its_code_typed_without_hyphens_and_by_its_beginning(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var packets = await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!, 3);
        Assert.Equal([packets[1]], (await FindAsync(library, packets[1].Replace("-", "", StringComparison.Ordinal).ToLowerInvariant())).Packets.Select(packet => packet.Code));
        Assert.Equal(packets, (await FindAsync(library, packets[0][..6])).Packets.Select(packet => packet.Code));
    }

    [Theory, OnBoth]
    public async Task A_code_with_one_wrong_character_is_told_so(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = (await library.PacketsAsync((await library.ReceiveAsync()).Lot.ToString()!)).Single();
        var wrong = code[..^1] + CheckCharacter.Letters.First(letter => letter != code[^1]);
        var found = await FindAsync(library, wrong);
        Assert.Equal((0, "code.check"), (found.Count, found.WrongCode?.Code));
    }

    [Theory, OnBoth]
    public async Task Accents_capitals_and_slips_are_forgiven_and_the_slip_is_told(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync("Crème de Lûne");
        Assert.Single((await FindAsync(library, "CREME lune")).Lots);
        var slip = await FindAsync(library, "creem");
        Assert.Equal("creme", slip.Words.Single().TakenFor);
        Assert.Single(slip.Lots);
    }

    [Theory, OnBoth]
    public async Task All_words_must_fit_and_a_year_narrows_to_its_season(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync("Millrace Red");
        await library.ReceiveAsync("Lockside Red");
        Assert.Equal("Millrace Red", Assert.Single((await FindAsync(library, "red millrace")).Lots).Name.Variety);
        Assert.Equal(2, (await FindAsync(library, "red 2025")).Lots.Count);
        Assert.Empty((await FindAsync(library, "red 2019")).Lots);
    }

    [Theory, OnBoth]
    public async Task A_new_name_on_the_parent_is_found_for_what_was_made_of_it_and_an_undone_one_no_more(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync("Plain")).Lot.ToString()!;
        var part = (await library.Act<SplitLot>().RunAsync(ASeedLibrary.Librarian, lot, Lineage.Seeds.Quantity.OfSeeds(40), null, null, default)).Allowed().ToString();
        (await library.Act<ClaimName>().RunAsync(ASeedLibrary.Librarian, new NameAsserted(lot, null, "Bramblewick", ClaimGrounds.GrowersWord, IsSure: true), default)).Allowed();
        Assert.Equal([part, lot], (await FindAsync(library, "bramblewick")).Lots.Select(found => found.Code));

        await using var db = await library.OpenAsync();
        var claim = await db.Set<LedgerEntryRow>().MaxAsync(entry => entry.Sequence);
        (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, claim, "wrong lot", default)).Allowed();
        Assert.Empty((await FindAsync(library, "bramblewick")).Lots);
    }

    [Theory, OnBoth]
    public async Task A_variety_is_found_by_its_other_names_and_by_how_it_looks(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync("Tollkeeper");
        (await library.Act<DescribeVariety>().RunAsync(ASeedLibrary.Librarian, new VarietyDescription(
            "Tollkeeper", ASeedLibrary.Species, BreedingStatus.OpenPollinated, ["Bridge Penny"], null, [("fruit_colour_mature", "orange")], null), null, default)).Allowed();
        foreach (var query in new[] { "bridge penny", "orange", "orange tollkeeper" })
        {
            var found = await FindAsync(library, query);
            Assert.Equal("Tollkeeper", Assert.Single(found.Names).Variety);
            Assert.Single(found.Lots);
        }
    }

    [Theory, OnBoth]
    public async Task Only_librarians_find_donors_and_an_erased_donor_is_found_no_more_nor_a_word_of_the_name_kept(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync();
        Assert.Empty((await FindAsync(library, "donor")).Accessions);
        Assert.Single((await library.Act<FindAnything>().RunAsync(ASeedLibrary.Librarian, "donor", 20, default)).Accessions);
        await using var db = await library.OpenAsync();
        var donor = await db.Set<DonorRow>().Select(row => row.Id).SingleAsync();
        (await library.Act<EraseDonor>().RunAsync(ASeedLibrary.Librarian, donor, default)).Allowed();
        Assert.Empty((await library.Act<FindAnything>().RunAsync(ASeedLibrary.Librarian, "donor", 20, default)).Accessions);
        Assert.False(await db.Set<SearchTrigramRow>().AnyAsync(row => row.Word == "donor"));
        Assert.Equal("", await db.Set<DonorRow>().Select(row => row.Name).SingleAsync());
    }

    [Theory, OnBoth]
    public async Task A_rebuild_gives_the_same_tables(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync("Millrace Red")).Lot.ToString()!;
        await library.ReceiveAsync("Lockside Red");
        (await library.Act<ClaimName>().RunAsync(ASeedLibrary.Librarian, new NameAsserted(lot, null, "Bramblewick", ClaimGrounds.GrowersWord, IsSure: true), default)).Allowed();
        var part = (await library.Act<SplitLot>().RunAsync(ASeedLibrary.Librarian, lot, Lineage.Seeds.Quantity.OfSeeds(40), null, null, default)).Allowed().ToString();
        (await library.Act<SplitLot>().RunAsync(ASeedLibrary.Librarian, part, Lineage.Seeds.Quantity.OfSeeds(10), null, null, default)).Allowed();
        foreach (var (name, colour) in ((string Name, string Colour)[])[("Bramblewick", "orange"), ("Nowhere Gold", "yellow")])
        {
            (await library.Act<DescribeVariety>().RunAsync(ASeedLibrary.Librarian, new VarietyDescription(name, ASeedLibrary.Species, BreedingStatus.NotKnown, [], null, [("fruit_colour_mature", colour)], null), null, default)).Allowed();
        }

        var before = await LotsAsync(library);
        (await library.Act<RebuildSearch>().RunAsync(Actor.System, default)).Allowed();
        Assert.Equal(before, await LotsAsync(library));
        Assert.Equal(3, (await FindAsync(library, "bramblewik")).Lots.Count);
        Assert.Equal(3, (await FindAsync(library, "orange")).Lots.Count);
        Assert.Equal("Nowhere Gold", Assert.Single((await FindAsync(library, "nowhere")).Names).Variety);
    }

    private static Task<Found> FindAsync(TestLibrary library, string query) => library.Act<FindAnything>().RunAsync(Actor.Visitor, query, 20, default);

    // Numbers of names may come out otherwise; what a lot goes by may not.
    private static async Task<IReadOnlyList<string>> LotsAsync(TestLibrary library)
    {
        await using var db = await library.OpenAsync();
        var lots = await db.Set<SearchLotRow>().Join(db.Set<SearchNameRow>(), lot => lot.NameId, name => name.Id, (lot, name) => new { lot.LotId, lot.Year, name.Display, name.Species }).ToListAsync();
        return [.. lots.OrderBy(lot => lot.LotId).Select(lot => lot.ToString()!)];
    }
}
