using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Search;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.TestServers;
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
