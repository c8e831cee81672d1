using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.TestServers;
using static LibraryDesk.Desk.Tests.Review.ReviewScene;

namespace LibraryDesk.Desk.Tests.Review;

/// <summary>A variety by origin, from the packet to the name claim.</summary>
public sealed class OriginTests
{
    private const string Grounds = "Upright growth and a plain white corolla, and its label stood in the pot.";

    [Theory, OnBoth]
    public async Task A_plant_with_a_stake_takes_the_variety_and_becomes_a_claim_for_its_lot(string database)
    {
        await using var scene = await OpenAsync(database);
        var code = await PacketAsync(scene);
        await AddClueAsync(scene, code, OriginKind.Stake);
        await scene.GiveAsync(scene.Wren, Annuum);
        Assert.IsType<Determined>(await scene.GiveAsync(scene.Tam, Annuum));

        var row = Assert.Single(await scene.RowsAsync<DeterminationRow>());
        Assert.Equal(("Millrace Red", code), (row.VarietyName, row.OriginPacketCode));
        Assert.True(Value(await scene.Library.Act<ReadOutcome>().RunAsync(scene.Librarian, scene.CaseId, default)).MayClaim);
        Assert.Null((await scene.Library.Act<ClaimFromDetermination>().RunAsync(scene.Librarian, scene.CaseId, default)).Refusal);
        var claim = Assert.Single(await scene.RowsAsync<NameClaimRow>(), c => c.Grounds == ClaimGrounds.DeskDetermination);
        Assert.Equal((Annuum, "Millrace Red", (OriginLink?)OriginLink.PacketCode), (claim.Species, claim.Variety, claim.Link));
    }

    [Theory, OnBoth]
    public async Task A_plant_that_is_another_species_than_its_packet_takes_no_name_from_it(string database)
    {
        await using var scene = await OpenAsync(database);
        await AddClueAsync(scene, await PacketAsync(scene), OriginKind.Stake);
        foreach (var actor in new[] { scene.Wren, scene.Tam, scene.Ivo }) await scene.GiveAsync(actor, Pubescens);
        var row = Assert.Single(await scene.RowsAsync<DeterminationRow>());
        Assert.Equal((Pubescens, null, null), (row.Taxon, row.VarietyName, row.OriginPacketCode));
    }

    [Theory, OnBoth]
    public async Task A_librarian_names_the_variety_of_a_loan_and_no_other(string database)
    {
        await using var scene = await OpenAsync(database);
        var code = await PacketAsync(scene);
        Assert.Null((await scene.Library.Act<LendPacket>().RunAsync(scene.Owner, new Handover(code), default)).Refusal);
        await AddClueAsync(scene, code, OriginKind.Loan);
        var alone = scene.Library.Act<DetermineAlone>();
        var asked = new DeterminationAlone(new NamedTaxon(Annuum), "Harrow Red", code, Grounds);
        Assert.Equal(DeterminationRules.NameNotClaimedCode, (await alone.RunAsync(scene.Librarian, scene.CaseId, asked, default)).Refusal?.Code);
        Assert.Equal(DeterminationRules.OtherSpeciesCode, (await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { VarietyName = "Millrace Red", Taxon = new NamedTaxon(Baccatum) }, default)).Refusal?.Code);
        Assert.Equal("Millrace Red", Value(await alone.RunAsync(scene.Librarian, scene.CaseId, asked with { VarietyName = "Millrace Red" }, default)).VarietyName);
    }

    [Theory, OnBoth]
    public async Task A_loan_that_nothing_ties_to_the_plant_gives_two_opinions_no_variety(string database)
    {
        await using var scene = await OpenAsync(database);
        var code = await PacketAsync(scene);
        await scene.Library.Act<LendPacket>().RunAsync(scene.Owner, new Handover(code), default);
        await AddClueAsync(scene, code, OriginKind.Loan);
        await scene.GiveAsync(scene.Wren, Annuum);
        await scene.GiveAsync(scene.Tam, Annuum);
        Assert.Null(Assert.Single(await scene.RowsAsync<DeterminationRow>()).VarietyName);
    }

    private static async Task<string> PacketAsync(ReviewScene scene) =>
        (await scene.Library.PacketsAsync((await scene.Library.ReceiveAsync()).Lot.ToString()!)).Single();

    private static async Task AddClueAsync(ReviewScene scene, string code, OriginKind kind) =>
        Assert.Null((await scene.Library.Act<AddOriginClue>().AddAsync(scene.Owner, scene.CaseId, new NewOriginClue(kind, code), default)).Refusal);
}
