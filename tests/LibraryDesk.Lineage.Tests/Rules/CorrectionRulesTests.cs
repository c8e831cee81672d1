using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Lineage.Tests.Laws;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests.Rules;

public class CorrectionRulesTests
{
    private readonly TestLibrary _library = new();
    private readonly Lot _lot;

    public CorrectionRulesTests() => _lot = _library.Lot(100);

    [Fact]
    public void An_undone_packing_puts_its_seed_back()
    {
        var packets = _library.PutUp(_lot, 3, 10);
        Undo();
        Assert.Equal(100, _library.State.Find(_lot.Id)!.Stock.Amount);
        Assert.All(packets, packet => Assert.Equal(PacketStanding.Void, _library.State.Find(packet.Id)!.Standing));
    }

    [Fact]
    public void What_seed_has_gone_on_from_is_not_undone()
    {
        _library.PutUp(_lot, 3, 10);
        var packing = _library.Entries[^1];
        _library.Lend(_library.State.Packets.First());
        Assert.Equal(CorrectionRules.GoneOnCode, Correct(packing, null).Refusal?.Code);
    }

    [Fact]
    public void An_undone_loan_leaves_the_packet_on_the_shelf()
    {
        var packet = _library.PutUp(_lot, 1, 10)[0];
        _library.Lend(packet);
        Undo();
        Assert.Equal((PacketStanding.OnShelf, null), (_library.State.Find(packet.Id)!.Standing, _library.State.Find(packet.Id)!.Holder));
    }

    [Fact]
    public void Seed_a_stocktake_found_stays_when_an_earlier_sowing_is_undone()
    {
        var packet = _library.PutUp(_lot, 1, 10)[0];
        _library.Do(GrowingRules.SowPacket(_library.Ids.Next<GrowOutId>(), _library.State.Find(packet.Id)!, null, null, Day(2026), GrowOutFacts.NotTold, _library.Today));
        var sowing = _library.Entries[^1];
        _library.Do(StockRules.Count(SeedStock.Of(_library.State.Find(packet.Id)!), Quantity.OfSeeds(2), null, Day(2026), "two were left in the corner", _library.Today, isSure: true));
        _library.Do(Correct(sowing, null));
        Assert.Equal(12, _library.State.Find(packet.Id)!.Stock.Amount);
    }

    [Fact]
    public void A_withdrawn_claim_stays_on_the_list()
    {
        _library.Do(NamingRules.Claim(new(_library.Ids.Next<ClaimId>(), _lot.Id.Node, null, "Ember", ClaimGrounds.LabelOnly, null, Day(2026), null), Day(2020), new HashSet<NodeId>(), _library.Today));
        Undo();
        Assert.True(Assert.Single(_library.State.Claims).IsWithdrawn);
    }

    [Fact]
    public void A_fact_is_said_again_even_when_seed_has_gone_on()
    {
        _library.PutUp(_lot, 1, 10);
        var made = _library.Entries.Single(entry => entry.Kind == EntryKind.LotMade);
        _library.Do(Correct(made, ((LotMade)made.ReadAct()) with { Species = "capsicum-chinense" }));
        Assert.Equal(("capsicum-chinense", 90), (_library.State.Find(_lot.Id)!.Species, _library.State.Find(_lot.Id)!.Stock.Amount));
    }

    [Fact]
    public void A_correction_is_not_made_twice_and_not_without_a_reason()
    {
        var entry = _library.Entries[^1];
        Assert.Equal(CorrectionRules.CorrectedAlreadyCode, CorrectionRules.Correct(entry, true, null, "typed wrongly", Slice()).Refusal?.Code);
        Assert.Equal(SeedRefusals.TextEmptyCode, CorrectionRules.Correct(entry, false, null, " ", Slice()).Refusal?.Code);
    }

    [Fact]
    public void A_correction_of_another_thing_is_refused() =>
        Assert.Equal(CorrectionRules.OtherThingCode, Correct(_library.Entries[^1], new Moved(_lot.Id.Node, null, "C-1", Day(2026))).Refusal?.Code);

    [Fact]
    public void A_recall_of_what_is_recalled_already_is_refused()
    {
        var first = _library.Do(HoldRules.Recall(_library.Ids.Next<HoldId>(), _lot.Id.Node, _lot.MadeOn, [], "off-types", [], Day(2026), _library.Today));
        var hold = _library.State.Find(first.Hold)!;
        Assert.Equal(HoldRules.RecalledAlreadyCode, HoldRules.Recall(new(900), _lot.Id.Node, _lot.MadeOn, [hold], "again", [], Day(2026), _library.Today).Refusal?.Code);
        _library.Do(HoldRules.Release(hold, Day(2026), "all told", _library.Today));
        Assert.False(_library.State.Find(hold.Id)!.Stands);
    }

    private void Undo() => _library.Do(Correct(_library.Entries[^1], null));

    private SeedState Slice() => RandomHistory.Rebuilt(_library.Entries);

    private Outcome<Corrected> Correct(LedgerEntry entry, SeedAct? instead) => CorrectionRules.Correct(entry, false, instead, "typed wrongly", Slice());
}
