using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.People;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Desk.Tests.Cases;

public class OriginTests
{
    private static readonly string Packet = new PacketCode('Q', 2026, 418).ToString();

    private readonly Actor _member = Actor.Member(Guid.NewGuid());

    [Theory, OnBoth]
    public async Task A_tied_packet_pulls_the_odds_towards_its_species(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        await ShelveAsync(library, "capsicum-pubescens", lentTo: null);
        var id = await ACase.StartAsync(library, _member);
        var before = await OddsAsync(library, id, "capsicum-pubescens");
        Assert.Null((await AddAsync(library, id, new NewOriginClue(OriginKind.Stake, Packet))).Refusal);
        Assert.True(await OddsAsync(library, id, "capsicum-pubescens") > 0.8 && before < 0.2);
    }

    [Theory, OnBoth]
    public async Task A_packet_is_named_with_its_variety_and_only_fits(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        await ShelveAsync(library, "capsicum-pubescens", _member.UserId);
        var id = await ACase.StartAsync(library, _member);
        await AddAsync(library, id, new NewOriginClue(OriginKind.Loan, Packet));
        var ranking = await RankedAsync(library, id);
        Assert.Equal("Widow Tansley", ranking.Packets.Single().Variety);
        Assert.Equal(Identification.Odds.Fit.Fits, ranking.Ranking.Packets.Single().Fit);
    }

    [Theory, OnBoth]
    public async Task A_loan_of_somebody_else_is_refused(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        await ShelveAsync(library, "capsicum-annuum", Guid.NewGuid());
        var id = await ACase.StartAsync(library, _member);
        Assert.Equal(AddOriginClue.NotBorrowedCode, (await AddAsync(library, id, new NewOriginClue(OriginKind.Loan, Packet))).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task A_code_with_a_slip_and_a_packet_nobody_has_are_told_apart(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        var slip = Packet[..^1] + (Packet[^1] == 'A' ? 'B' : 'A');
        Assert.Equal("code.check", (await AddAsync(library, id, new NewOriginClue(OriginKind.Stake, slip))).Refusal?.Code);
        Assert.Equal(AddOriginClue.NoSuchPacketCode, (await AddAsync(library, id, new NewOriginClue(OriginKind.Stake, Packet))).Refusal?.Code);
    }

    [Theory, OnBoth]
    public async Task Taking_the_clue_back_gives_the_odds_of_before(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        await ShelveAsync(library, "capsicum-pubescens", lentTo: null);
        var id = await ACase.StartAsync(library, _member);
        var before = await OddsAsync(library, id, "capsicum-pubescens");
        var clue = (await AddAsync(library, id, new NewOriginClue(OriginKind.Stake, Packet))).Match(c => c.Id, _ => 0);
        Assert.Null((await library.Act<AddOriginClue>().TakeBackAsync(_member, id, clue, default)).Refusal);
        Assert.Equal(before, await OddsAsync(library, id, "capsicum-pubescens"));
    }

    [Theory, OnBoth]
    public async Task The_same_clue_twice_is_one_clue(string database)
    {
        await using var library = await ACase.LibraryAsync(database);
        var id = await ACase.StartAsync(library, _member);
        await AddAsync(library, id, new NewOriginClue(OriginKind.Gift));
        await AddAsync(library, id, new NewOriginClue(OriginKind.Gift));
        await using var db = await library.OpenAsync();
        Assert.Equal(1, await db.Set<OriginClueRow>().CountAsync());
    }

    private Task<Lineage.Outcome<OriginClueRow>> AddAsync(TestLibrary library, long id, NewOriginClue clue) =>
        library.Act<AddOriginClue>().AddAsync(_member, id, clue, default);

    private async Task<CaseRanking> RankedAsync(TestLibrary library, long id) =>
        (await library.Act<RankCase>().ForAsync(_member, id, default)).Match(r => r, no => throw new InvalidOperationException(no.Message));

    private async Task<double> OddsAsync(TestLibrary library, long id, string candidate) =>
        (await RankedAsync(library, id)).Ranking.Candidates.Single(c => c.Id == candidate).Probability;

    /// <summary>Rows as the ledger derives them: a lot under a name, one packet of it, lent or not.</summary>
    private static async Task ShelveAsync(TestLibrary library, string species, Guid? lentTo)
    {
        await using var db = await library.OpenAsync();
        var day = new DateOnly(2026, 3, 14);
        db.Add(new LotRow { Id = 1, Code = "L26-0001", Species = species, MadeOn = day, Unit = SeedUnit.Seeds, Made = 100, Stock = 80 });
        db.Add(new NameClaimRow { Id = 2, NodeId = 1, Species = species, Variety = "Widow Tansley", Grounds = ClaimGrounds.GrowersWord, ClaimedOn = day });
        db.Add(new PacketRow { Id = 3, Code = Packet, LotId = 1, Packing = 3, PackedOn = day, Unit = SeedUnit.Seeds, Held = 20, Stock = 20, Standing = PacketStanding.OnShelf });
        if (lentTo is { } borrower) db.Add(new LoanRow { Id = 4, PacketId = 3, BorrowerId = borrower, LentOn = day });
        await db.SaveChangesAsync();
    }
}
