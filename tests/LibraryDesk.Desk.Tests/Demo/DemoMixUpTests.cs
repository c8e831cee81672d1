using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.MixUps;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.Lineage.MixUps;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Demo;

/// <summary>The story told by the demo: the swap-table seed that came in under a wrong name is found as the likeliest cause, and its recall list is right.</summary>
public sealed partial class DemoLoaderTests
{
    [Theory, OnBoth]
    public async Task The_swap_table_seed_is_found_as_the_likeliest_cause(string database)
    {
        var library = await demo.OnAsync(database);
        var (blend, swap) = await BlendAsync(library);
        var found = (await library.Act<FindMixUp>().ReadAsync(Actor.System, blend, default)).Allowed();
        var first = found.Causes[0];
        Assert.Equal((CauseKind.ArrivedWrong, swap), (first.Placed.Cause.Kind, first.Placed.Place.Label));
        Assert.True(first.Probability > 0.5 && first.Probability > 2 * found.Causes[1].Probability, $"{first.Probability}, then {found.Causes[1].Probability}");
        Assert.Equal(first.Placed.Cause, Assert.Single(found.Explanations[0].Causes).Cause);
        Assert.Equal((3, 6), (found.Off, found.Plants.Count));
    }

    [Theory, OnBoth]
    public async Task Its_recall_list_is_every_packet_made_of_the_swap_table_seed_and_nothing_else(string database)
    {
        var library = await demo.OnAsync(database);
        var (_, swap) = await BlendAsync(library);
        var preview = (await library.Act<PreviewRecall>().ReadAsync(Actor.System, swap, default)).Allowed();

        // Walked here edge by edge, apart from the acts' own query: numbers rise from parent to child, so one pass reaches all.
        await using var db = await library.OpenAsync();
        var edges = await db.Set<LineageEdgeRow>().AsNoTracking().ToListAsync();
        var reached = new HashSet<long> { await db.Set<AccessionRow>().Where(row => row.Code == swap).Select(row => row.Id).SingleAsync() };
        foreach (var edge in edges.OrderBy(edge => edge.ChildId).Where(edge => reached.Contains(edge.ParentId))) reached.Add(edge.ChildId);
        var codes = await db.Set<PacketRow>().Where(row => reached.Contains(row.Id) && row.Standing != PacketStanding.Void).Select(row => row.Code).ToListAsync();
        Assert.Equal(codes.Order(), preview.Packets.Select(packet => packet.Code).Order());
        Assert.Equal(await db.Set<LotRow>().CountAsync(row => reached.Contains(row.Id)), preview.Reach.Lots.Count);
        Assert.Equal(await db.Set<GrowOutRow>().CountAsync(row => reached.Contains(row.Id)), preview.Reach.GrowOuts.Count);
    }

    [Theory, OnBoth]
    public async Task What_is_called_back_already_is_said_so(string database)
    {
        var library = await demo.OnAsync(database);
        var (blend, _) = await BlendAsync(library);
        var found = (await library.Act<FindMixUp>().ReadAsync(Actor.System, blend, default)).Allowed();
        await using var db = await library.OpenAsync();
        Assert.Equal(await db.Set<RecallRow>().Select(row => row.HoldId).SingleAsync(), found.Causes[0].Placed.Scope.RecallId);
    }

    [Theory, OnBoth]
    public async Task Members_do_not_look_for_mix_ups(string database)
    {
        var library = await demo.OnAsync(database);
        Assert.NotNull((await library.Act<FindMixUp>().ReadAsync(ASeedLibrary.Member, (await BlendAsync(library)).Blend, default)).Refusal);
    }

    [Theory, OnBoth]
    public async Task Its_search_finds_a_name_with_slips_a_trait_and_a_season(string database)
    {
        var library = await demo.OnAsync(database);
        var search = library.Act<FindAnything>();
        async Task<IReadOnlyList<string>> Varieties(string query) => [.. (await search.RunAsync(Actor.Visitor, query, 20, default)).Names.Select(name => name.Variety)];
        Assert.Equal("Ferryman's Lamp", (await Varieties("ferymans lmap"))[0]);
        Assert.Contains("Widow Tansley", await Varieties("orange lantern"));
        var season = await search.RunAsync(Actor.Visitor, "millrace 2025", 20, default);
        Assert.NotEmpty(season.Lots);
        Assert.All(season.Lots, lot => Assert.Equal(("Millrace Red", 2025), (lot.Name.Variety, lot.Year)));
    }

    [Theory, OnBoth]
    public async Task Donors_are_found_by_librarians_alone(string database)
    {
        var library = await demo.OnAsync(database);
        var search = library.Act<FindAnything>();
        Assert.Contains((await search.RunAsync(Actor.System, "odile brant", 20, default)).Accessions, accession => accession.Donor == "Odile Brandt");
        var member = await search.RunAsync(ASeedLibrary.Member, "odile brant", 20, default);
        Assert.Empty(member.Accessions);
        Assert.All(member.Words, word => Assert.Null(word.TakenFor));
    }

    private static async Task<(string Blend, string Swap)> BlendAsync(TestLibrary library)
    {
        await using var db = await library.OpenAsync();
        var swap = await db.Set<AccessionRow>().SingleAsync(row => row.DeclaredName == "Ferryman's Lamp" && row.Source == Lineage.Acts.SeedSource.SwapTable);
        var blend = await db.Set<LotRow>().Where(row => row.Origin == Lineage.Acts.LotOrigin.Blend && row.Species == "capsicum-baccatum").Select(row => row.Code).SingleAsync();
        return (blend, swap.Code);
    }
}
