using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Seeds;

public class SeedActTests
{
    [Theory, OnBoth]
    public async Task Seeds_are_conserved_from_the_donor_to_the_packets(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync(seeds: 500)).Lot.ToString()!;
        await library.PacketsAsync(lot, 7, 20);
        (await library.Act<SplitLot>().RunAsync(ASeedLibrary.Librarian, lot, Quantity.OfSeeds(60), null, null, default)).Allowed();
        await using var db = await library.OpenAsync();
        Assert.Equal(500, await db.Set<LotRow>().SumAsync(row => row.Stock) + await db.Set<PacketRow>().SumAsync(row => row.Stock) + await db.Set<AccessionRow>().SumAsync(row => row.Stock));
    }

    [Theory, OnBoth]
    public async Task Lots_of_two_species_are_not_blended(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var one = (await library.ReceiveAsync()).Lot.ToString();
        var other = (await library.ReceiveAsync(species: "capsicum-baccatum")).Lot.ToString();
        var outcome = await library.Act<BlendLots>().RunAsync(ASeedLibrary.Librarian, [new(one, null), new(other, null)], null, null, isSure: false, default);
        Assert.Equal(LotRules.OtherSpeciesCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_hold_on_the_first_lot_stops_a_packet_two_generations_on(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var home = (await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Librarian, new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(100)), default)).Allowed();
        var child = (await library.PacketsAsync(home.Lot.ToString()!)).Single();
        (await library.Act<HoldSeed>().RunAsync(ASeedLibrary.Librarian, "L26-001", HoldReason.Health, default)).Allowed();
        Assert.Equal(SeedRefusals.OnHoldCode, (await library.Act<LendPacket>().RunAsync(ASeedLibrary.Member, new Handover(child), default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_member_takes_a_packet_for_themselves_and_for_nobody_else(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var code = (await library.PacketsAsync(lot)).Single();
        var lend = library.Act<LendPacket>();
        Assert.Equal(PeopleRefusals.MayNotCode, (await lend.RunAsync(ASeedLibrary.Member, new Handover(code, ASeedLibrary.OtherMember.UserId), default)).Refusal?.Code);
        Assert.Equal(PeopleRefusals.SignInCode, (await lend.RunAsync(Actor.Visitor, new Handover(code), default)).Refusal?.Code);
        Assert.True((await lend.RunAsync(ASeedLibrary.Member, new Handover(code), default)).IsAllowed);
    }

    [Theory, OnBoth]
    public async Task Only_the_borrower_or_a_librarian_brings_a_packets_seed_back(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var outcome = await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.OtherMember, new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(50)), default);
        Assert.Equal(PeopleRefusals.MayNotCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task What_a_member_hands_in_waits_for_a_librarian(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var home = (await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(50)), default)).Allowed();
        Assert.True(home.IsHeld);
        var put = await library.Act<PutUpPackets>().RunAsync(ASeedLibrary.Librarian, home.Lot.ToString(), 1, Quantity.OfSeeds(20), null, null, default);
        Assert.Equal(SeedRefusals.OnHoldCode, put.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Seed_whose_stake_was_lost_gets_no_growers_word_for_its_name(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var home = (await library.Act<ReturnSeed>().RunAsync(
            ASeedLibrary.Librarian, new SeedReturn(code, null, ASeedLibrary.Facts(), Quantity.OfSeeds(50), StakeStayed: false), default)).Allowed();
        var view = (await library.Act<ShowLot>().ReadAsync(ASeedLibrary.Librarian, home.Lot.ToString(), default)).Allowed();
        Assert.DoesNotContain(view.Claims, claim => claim.Grounds == ClaimGrounds.GrowersWord);
        Assert.Contains(view.Holds, hold => hold.Reason == HoldReason.NameInDoubt);
    }

    [Theory, OnBoth]
    public async Task More_plants_saved_from_than_grown_is_refused(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var outcome = await library.Act<ReturnSeed>().RunAsync(ASeedLibrary.Member, new SeedReturn(code, null, ASeedLibrary.Facts(12, 14), Quantity.OfSeeds(50)), default);
        Assert.Equal(GrowingRules.PlantsCode, outcome.Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Undoing_a_packing_puts_the_seed_back_and_keeps_the_entry(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync(seeds: 500)).Lot.ToString()!;
        await library.PacketsAsync(lot, 3, 20);
        (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, 4, "counted wrongly", default)).Allowed();
        var view = (await library.Act<ShowLot>().ReadAsync(ASeedLibrary.Librarian, lot, default)).Allowed();
        Assert.Equal(Quantity.OfSeeds(500), view.Lot.Stock);
        Assert.Empty(view.Packets);
        Assert.Equal(["corrected", "packeted", "lot-made"], view.History.Select(line => line.Kind));
        Assert.Equal(CorrectionRules.CorrectedAlreadyCode, (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, 4, "again", default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Seed_that_has_gone_on_is_not_undone(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await library.LentPacketAsync();
        Assert.Equal(CorrectionRules.GoneOnCode, (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, 4, "no", default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_recall_lists_every_packet_downstream_and_takes_its_holders_answer(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var started = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, "L26-001", "off-types came up", default)).Allowed();
        Assert.Equal((1, 1), (started.Packets, started.Holders));
        var recalls = library.Act<RecallList>();
        Assert.Equal(PeopleRefusals.MayNotCode, (await recalls.AnswerAsync(ASeedLibrary.OtherMember, started.Hold.Value, code, RecallAnswer.NotSown, default)).Refusal?.Code);
        (await recalls.AnswerAsync(ASeedLibrary.Member, started.Hold.Value, code, RecallAnswer.NotSown, default)).Allowed();
        Assert.Equal(RecallAnswer.NotSown, (await recalls.ReadAsync(ASeedLibrary.Librarian, default)).Allowed().Recalls.Single().Packets.Single().Answer);
        Assert.Equal(HoldRules.RecalledAlreadyCode, (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, "again", default)).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_determination_tied_to_a_packet_becomes_a_claim_for_its_lot(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var code = await library.LentPacketAsync();
        var caseId = await DeterminedAsync(library, code, "Millrace Red");
        var claim = library.Act<ClaimFromDetermination>();
        (await claim.RunAsync(ASeedLibrary.Librarian, caseId, default)).Allowed();
        var view = (await library.Act<ShowLot>().ReadAsync(ASeedLibrary.Librarian, "L26-001", default)).Allowed();
        Assert.Equal(("Millrace Red", ClaimGrounds.DeskDetermination), (view.Claims[^1].Variety, view.Claims[^1].Grounds));
        Assert.Equal(ClaimFromDetermination.ClaimedAlreadyCode, (await claim.RunAsync(ASeedLibrary.Librarian, caseId, default)).Refusal?.Code);
        (await library.Act<CorrectEntry>().RunAsync(ASeedLibrary.Librarian, await LastEntryAsync(library), "the wrong lot", default)).Allowed();
        (await claim.RunAsync(ASeedLibrary.Librarian, caseId, default)).Allowed();
    }

    [Theory, OnBoth]
    public async Task A_species_is_claimed_only_for_a_lot_the_plant_grew_from_and_never_against_it(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync(species: "capsicum-baccatum")).Lot.ToString()!;
        var unnamed = (await library.ReceiveAsync(species: null)).Lot.ToString()!;
        var caseId = await DeterminedAsync(library, null, null);
        var claim = library.Act<ClaimFromDetermination>();
        Assert.Equal(ClaimFromDetermination.GrewFromItCode, (await claim.RunAsync(ASeedLibrary.Librarian, caseId, unnamed, false, default)).Refusal?.Code);
        Assert.Equal(ClaimFromDetermination.OtherSpeciesCode, (await claim.RunAsync(ASeedLibrary.Librarian, caseId, lot, true, default)).Refusal?.Code);
        (await claim.RunAsync(ASeedLibrary.Librarian, caseId, unnamed, true, default)).Allowed();
    }

    [Theory, OnBoth]
    public async Task A_determination_without_an_origin_names_no_lot(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var caseId = await DeterminedAsync(library, null, null);
        Assert.Equal(ClaimFromDetermination.NoOriginCode, (await library.Act<ClaimFromDetermination>().RunAsync(ASeedLibrary.Librarian, caseId, default)).Refusal?.Code);
    }

    private static async Task<long> LastEntryAsync(TestLibrary library)
    {
        await using var db = await library.OpenAsync();
        return await db.Set<LedgerEntryRow>().MaxAsync(entry => entry.Sequence);
    }

    [Theory, OnBoth]
    public async Task Nobody_but_a_librarian_changes_the_collection(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var lot = (await library.ReceiveAsync()).Lot.ToString();
        var volunteer = Actor.Volunteer(Guid.NewGuid());
        var refusals = new[]
        {
            (await library.Act<ReceiveAccession>().RunAsync(volunteer, new SeedOffer(null, SeedSource.Donor, null, "x", Quantity.OfSeeds(5)), default)).Refusal,
            (await library.Act<SplitLot>().RunAsync(volunteer, lot, Quantity.OfSeeds(5), null, null, default)).Refusal,
            (await library.Act<BlendLots>().RunAsync(volunteer, [new(lot, null)], null, null, isSure: false, default)).Refusal,
            (await library.Act<PutUpPackets>().RunAsync(volunteer, lot, 1, Quantity.OfSeeds(5), null, null, default)).Refusal,
            (await library.Act<ClaimName>().RunAsync(volunteer, new NameAsserted(lot, null, "x", ClaimGrounds.LabelOnly), default)).Refusal,
            (await library.Act<HoldSeed>().RunAsync(volunteer, lot, HoldReason.Health, default)).Refusal,
            (await library.Act<ReleaseHold>().RunAsync(volunteer, 1, "x", default)).Refusal,
            (await library.Act<RecallSeed>().RunAsync(volunteer, lot, "x", default)).Refusal,
            (await library.Act<MoveSeed>().RunAsync(volunteer, lot, "x", default)).Refusal,
            (await library.Act<CountStock>().RunAsync(volunteer, lot, Quantity.OfSeeds(5), null, "x", isSure: false, default)).Refusal,
            (await library.Act<DiscardSeed>().RunAsync(volunteer, lot, Quantity.OfSeeds(5), "x", default)).Refusal,
            (await library.Act<SendSeedOn>().RunAsync(volunteer, lot, Quantity.OfSeeds(5), "x", default)).Refusal,
            (await library.Act<CorrectEntry>().RunAsync(volunteer, 1, "x", default)).Refusal,
            (await library.Act<ClaimFromDetermination>().RunAsync(volunteer, 1, default)).Refusal,
        };
        Assert.All(refusals, refusal => Assert.Equal(PeopleRefusals.MayNotCode, refusal?.Code));
    }

    private static async Task<long> DeterminedAsync(TestLibrary library, string? packet, string? variety)
    {
        await using var db = await library.OpenAsync();
        var filed = new CaseRow { Title = "A pepper", GuideId = "capsicum", GuideVersion = "2026.1", State = CaseState.Determined, CreatedAt = library.Clock.GetUtcNow(), StateSince = library.Clock.GetUtcNow() };
        db.Add(filed);
        await db.SaveChangesAsync();
        db.Add(new DeterminationRow
        {
            CaseId = filed.Id, Round = 1, Taxon = ASeedLibrary.Species, VarietyName = variety, OriginPacketCode = packet, Grounds = "two opinions",
            GuideId = "capsicum", GuideVersion = "2026.1", OddsJson = "{}", At = library.Clock.GetUtcNow(),
        });
        await db.SaveChangesAsync();
        return filed.Id;
    }
}
