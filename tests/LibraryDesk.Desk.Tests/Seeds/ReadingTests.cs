using System.Text.Json;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Seeds;

public class ReadingTests
{
    [Theory, OnBoth]
    public async Task A_packets_page_names_nobody(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(100)), default);
        var view = (await library.Act<ShowPacket>().ReadAsync(Actor.Visitor, code, default)).Allowed();
        Assert.Null(view.MyLoan);
        Assert.Null(view.Packet.Holder);
        Assert.All(view.Lineage.Packets, packet => Assert.Null(packet.Holder));
        Assert.All(view.Lineage.GrowOuts, growOut => Assert.Null(growOut.Grower));
        Assert.All(view.Lineage.Accessions, accession => Assert.Null(accession.Donor));
        Assert.All(view.Lineage.Claims, claim => Assert.Null(claim.By));
        Assert.Empty(view.Lineage.Loans);
    }

    [Theory, OnBoth]
    public async Task A_packet_that_came_home_leads_back_to_its_donor_and_on_to_its_harvest(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var home = (await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Librarian, new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(100)), default)).Allowed();
        var child = (await library.PacketsAsync(home.Lot.ToString()!)).Single();
        var view = (await library.Act<ShowPacket>().ReadAsync(Actor.Visitor, child, default)).Allowed();
        var graph = LineageGraph.Of(view.Lineage);
        Assert.Equal(
            [NodeKind.Accession, NodeKind.Lot, NodeKind.Packet, NodeKind.GrowOut, NodeKind.Lot],
            graph.Ancestors(view.Packet.Id.Node).Select(node => node.Kind));
        Assert.Equal("Millrace Red", view.Name.Variety);
        var parent = (await library.Act<ShowPacket>().ReadAsync(Actor.Visitor, code, default)).Allowed();
        Assert.Contains(LineageGraph.Of(parent.Lineage).Descendants(parent.Packet.Id.Node), node => node.Label == child);
    }

    [Theory, OnBoth]
    public async Task A_blend_goes_by_its_largest_part_and_says_that_others_are_in_it(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var red = (await library.ReceiveAsync("Millrace Red", 300)).Lot.ToString()!;
        var gold = (await library.ReceiveAsync("Weir Gold", 100)).Lot.ToString()!;
        var blend = (await library.Act<BlendLots>().RunAsync(ASeedLibrary.Librarian, [new(red, null), new(gold, null)], null, null, isSure: true, default)).Allowed();
        var view = (await library.Act<ShowLot>().ReadAsync(Actor.Visitor, blend.ToString(), default)).Allowed();
        Assert.Equal(new GoesBy("Millrace Red", ASeedLibrary.Species, OthersToo: true), view.Name);
        Assert.Equal([0.25, 0.75], view.Lineage.Edges.Where(edge => edge.Child == view.Lot.Id.Node).Select(edge => edge.Share).Order());
    }

    [Theory, OnBoth]
    public async Task Lots_are_found_by_a_name_claimed_upstream(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        await library.ReceiveAsync("Weir 100% Gold");
        await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(100)), default);
        var find = library.Act<FindLots>();
        Assert.Equal(2, (await find.FindAsync(Actor.Visitor, "millrace", false, 1, default)).Total);
        Assert.Equal(2, (await find.FindAsync(Actor.Visitor, "milrace red", false, 1, default)).Total);
        Assert.Equal(1, (await find.FindAsync(Actor.Visitor, "100%", false, 1, default)).Total);
        Assert.Equal(0, (await find.FindAsync(Actor.Visitor, "1_0", false, 1, default)).Total);
        Assert.Equal(3, (await find.FindAsync(Actor.Visitor, "capsicum", false, 1, default)).Total);
        Assert.Equal(1, (await find.FindAsync(Actor.Visitor, "l26-002", false, 1, default)).Total);
    }

    [Theory, OnBoth]
    public async Task A_members_loans_carry_what_an_origin_clue_needs(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var loans = library.Act<MemberLoans>();
        var loan = (await loans.OfAsync(ASeedLibrary.Member, ASeedLibrary.Member.UserId!.Value, default)).Allowed().Loans.Single();
        Assert.Equal((code, "Millrace Red", ASeedLibrary.Species, 20L, true), (loan.PacketCode, loan.Variety, loan.Species, loan.SeedCount, loan.IsOpen));
        Assert.Equal(PeopleRefusals.MayNotCode, (await loans.OfAsync(ASeedLibrary.OtherMember, ASeedLibrary.Member.UserId!.Value, default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task People_on_a_lots_page_are_for_librarians(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.LentPacketAsync();
        var show = library.Act<ShowLot>();
        var seen = (await show.ReadAsync(ASeedLibrary.Librarian, "L26-001", default)).Allowed();
        var hidden = (await show.ReadAsync(ASeedLibrary.Member, "L26-001", default)).Allowed();
        Assert.Single(seen.Holders);
        Assert.Contains("A donor", seen.People.Values);
        Assert.Empty(hidden.Holders);
        Assert.Empty(hidden.People);
        Assert.DoesNotContain(ASeedLibrary.Member.UserId!.Value.ToString(), JsonSerializer.Serialize(hidden.Packets), StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_code_with_a_slip_is_refused_before_it_is_looked_up(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var slip = code.Replace("0001", "0007", StringComparison.Ordinal);
        Assert.Equal("code.check", (await library.Act<ShowPacket>().ReadAsync(Actor.Visitor, slip, default)).Refusal?.Code);
        Assert.Equal(FindingRefusals.NotFoundCode, (await library.Act<ShowPacket>().ReadAsync(Actor.Visitor, new PacketCode('Q', 2026, 999).ToString(), default)).Refusal?.Code);
    }
}
