using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Search;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests.Search;

public sealed class SearchTests
{
    [Theory, OnBoth]
    public async Task A_case_is_found_by_whoever_may_see_it(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);

        Assert.Equal($"/cases/{scene.CaseId}", (await FindAsync(scene.Library, scene.Owner, "UNMARKED")).Hits.Single(h => h.Kind == SearchKind.Case).Address);
        Assert.Equal($"/queue/{scene.CaseId}", (await FindAsync(scene.Library, scene.Wren, "unmarked")).Hits.Single(h => h.Kind == SearchKind.Case).Address);
        Assert.DoesNotContain((await FindAsync(scene.Library, Actor.Member(Guid.NewGuid()), "unmarked")).Hits, h => h.Kind == SearchKind.Case);
        Assert.DoesNotContain((await FindAsync(scene.Library, Actor.Visitor, "unmarked")).Hits, h => h.Kind == SearchKind.Case);
    }

    [Theory, OnBoth]
    public async Task A_number_or_a_whole_code_leads_straight_to_its_page(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        var code = await scene.Library.LentPacketAsync();

        Assert.Equal($"/cases/{scene.CaseId}", (await FindAsync(scene.Library, scene.Owner, $"#{scene.CaseId}")).Straight);
        Assert.Equal($"/cases/{scene.CaseId}", (await FindAsync(scene.Library, scene.Owner, $"Case {scene.CaseId}")).Straight);
        Assert.Equal($"/cases/{scene.CaseId}", (await FindAsync(scene.Library, scene.Owner, $"caso #{scene.CaseId}")).Straight);
        Assert.Equal($"/p/{code}", (await FindAsync(scene.Library, Actor.Visitor, code.ToLowerInvariant())).Straight);
        Assert.Null((await FindAsync(scene.Library, Actor.Member(Guid.NewGuid()), $"{scene.CaseId}")).Straight);
    }

    [Theory, OnBoth]
    public async Task A_slip_in_a_code_and_words_that_no_seed_goes_by_are_said(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync("Millrace Red")).Lot.ToString()!;
        var code = (await library.PacketsAsync(lot)).Single();
        var slip = code[..^1] + (code[^1] == 'X' ? 'Z' : 'X');

        Assert.NotNull((await FindAsync(library, ASeedLibrary.Member, slip)).WrongCode);
        var found = await FindAsync(library, ASeedLibrary.Member, "millrace qqzzx");
        Assert.Null(found.WrongCode);
        Assert.Equal(["qqzzx"], found.LeftOut);
        Assert.Contains(found.Hits, hit => hit.Address == $"/lots/{lot}");
        Assert.Empty((await FindAsync(library, ASeedLibrary.Member, "millrace")).LeftOut);
    }

    [Theory, OnBoth]
    public async Task A_packet_is_found_by_its_borrower_under_its_name_and_by_volunteers_under_the_beginning_of_its_code(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync("Millrace Red")).Lot.ToString()!;
        var code = (await library.PacketsAsync(lot)).Single();
        (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(code), default)).Allowed();

        Assert.Contains((await FindAsync(library, ASeedLibrary.Member, "millrace")).Hits, hit => hit.Address == $"/p/{code}");
        Assert.DoesNotContain((await FindAsync(library, ASeedLibrary.OtherMember, "millrace")).Hits, hit => hit.Kind == SearchKind.Packet);
        Assert.Contains((await FindAsync(library, Actor.Volunteer(Guid.NewGuid()), code[..^2])).Hits, hit => hit.Address == $"/p/{code}");
        Assert.DoesNotContain((await FindAsync(library, ASeedLibrary.OtherMember, code[..^2])).Hits, hit => hit.Kind == SearchKind.Packet);
    }

    [Theory, OnBoth]
    public async Task People_are_found_by_librarians_alone(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        var mail = $"p{scene.Owner.UserId:N}@example.org";
        await using (var db = await scene.Library.OpenAsync())
        {
            var user = await db.Users.FindAsync(scene.Owner.UserId!.Value);
            user!.NormalizedEmail = mail.ToUpperInvariant();
            await db.SaveChangesAsync();
        }

        Assert.Contains((await FindAsync(scene.Library, scene.Librarian, mail)).Hits, h => h.Kind == SearchKind.Person);
        Assert.DoesNotContain((await FindAsync(scene.Library, scene.Wren, mail)).Hits, h => h.Kind == SearchKind.Person);
        Assert.DoesNotContain((await FindAsync(scene.Library, scene.Owner, mail)).Hits, h => h.Kind == SearchKind.Person);
    }

    [Theory, OnBoth]
    public async Task Donors_are_found_by_librarians_alone_until_they_are_erased(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.ReceiveAsync("Millrace Red");
        var hit = Assert.Single((await FindAsync(library, ASeedLibrary.Librarian, "Dónor")).Hits, hit => hit.Kind == SearchKind.Donor);
        Assert.Equal(("A donor", "/donors?q=A%20donor"), (hit.Heading, hit.Address));
        Assert.DoesNotContain((await FindAsync(library, Actor.Volunteer(Guid.NewGuid()), "donor")).Hits, found => found.Kind is SearchKind.Donor or SearchKind.Accession);

        await using var db = await library.OpenAsync();
        (await library.Act<EraseDonor>().RunAsync(ASeedLibrary.Librarian, await db.Set<DonorRow>().Select(row => row.Id).SingleAsync(), default)).Allowed();
        Assert.DoesNotContain((await FindAsync(library, ASeedLibrary.Librarian, "donor")).Hits, found => found.Kind is SearchKind.Donor or SearchKind.Accession);
    }

    [Theory, OnBoth]
    public async Task An_accessions_code_leads_to_its_lot(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var received = await library.ReceiveAsync("Millrace Red");
        await library.ReceiveAsync("Weir Gold");
        var code = received.Accession.ToString();

        Assert.Equal($"/lots/{received.Lot}", (await FindAsync(library, Actor.Volunteer(Guid.NewGuid()), code.ToLowerInvariant())).Straight);
        Assert.Null((await FindAsync(library, ASeedLibrary.Member, code)).Straight);
        Assert.Equal([received.Lot.ToString()], (await library.Act<FindLots>().FindAsync(ASeedLibrary.Librarian, code, toLendOnly: false, 1, default)).Lots.Select(lot => lot.Code));
    }

    [Theory, OnBoth]
    public async Task A_library_that_seed_was_sent_to_is_found_with_what_was_sent(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        (await library.Act<SendSeedOn>().RunAsync(ASeedLibrary.Librarian, lot, Quantity.OfSeeds(20), "Élmbridge Seed Shed", default)).Allowed();

        var hit = Assert.Single((await FindAsync(library, ASeedLibrary.Librarian, "elmbr")).Hits, hit => hit.Kind == SearchKind.Library);
        Assert.Equal(("Élmbridge Seed Shed", $"/lots/{lot}"), (hit.Heading, hit.Address));
        Assert.DoesNotContain((await FindAsync(library, ASeedLibrary.Member, "elmbr")).Hits, found => found.Kind == SearchKind.Library);
    }

    [Theory, OnBoth]
    public async Task More_lots_than_are_shown_are_said_with_the_way_to_them(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        for (var lots = 0; lots < SearchDesk.MostOfAKind; lots++) await library.ReceiveAsync("Millrace Red");
        Assert.Null((await FindAsync(library, ASeedLibrary.Librarian, "millrace")).AllLots);

        await library.ReceiveAsync("Millrace Red");
        Assert.Equal("/lots?q=millrace", (await FindAsync(library, ASeedLibrary.Librarian, "millrace")).AllLots);
        Assert.Equal(SearchDesk.MostOfAKind + 1, (await library.Act<FindLots>().FindAsync(ASeedLibrary.Librarian, "millrace", toLendOnly: false, 1, default)).Total);
    }

    [Theory, OnBoth]
    public async Task Guides_are_found_by_species_and_by_trait(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);

        Assert.Contains((await FindAsync(library, Actor.Visitor, "baccatum")).Hits, h => h.Address == "/guides/capsicum/capsicum-baccatum");
        Assert.Empty((await FindAsync(library, Actor.Visitor, "  ")).Hits);
        Assert.Empty((await FindAsync(library, Actor.Visitor, new string('x', 500))).Hits);
    }

    private static async Task<SearchFound> FindAsync(TestLibrary library, Actor actor, string text)
    {
        await using var scope = library.Services.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<SearchDesk>().FindAsync(actor, text, default);
    }
}
