using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests.Rules;

public class LendingRulesTests
{
    private readonly TestLibrary _library = new();
    private readonly Packet _packet;

    public LendingRulesTests() => _packet = _library.PutUp(_library.Lot(100), 1, 10)[0];

    [Fact]
    public void A_packet_on_the_shelf_is_lent()
    {
        var loan = _library.Lend(_packet);
        Assert.Equal((PacketStanding.Lent, Member, loan.Id), (Now.Standing, Now.Holder!.Value, Now.Loan!.Value));
    }

    [Fact]
    public void A_hold_on_the_parent_lot_stops_the_packet()
    {
        var hold = _library.Hold(_packet.Lot.Node);
        Assert.Equal(SeedRefusals.OnHoldCode, Lend([hold]).Refusal?.Code);
    }

    [Fact]
    public void A_recall_is_spoken_of_before_another_hold()
    {
        var health = _library.Hold(_packet.Lot.Node, HoldReason.Health);
        var recall = health with { Id = new(health.Id.Value + 1), Reason = HoldReason.Recall };
        Assert.Contains("called back", Lend([health, recall]).Refusal!.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("called back", Lend([health]).Refusal!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lifted_hold_stops_nothing()
    {
        var hold = _library.Hold(_packet.Lot.Node);
        _library.Do(HoldRules.Release(hold, Day(2026), "settled", _library.Today));
        Assert.True(Lend([_library.State.Find(hold.Id)!]).IsAllowed);
    }

    [Fact]
    public void The_last_packet_goes_to_one_of_two()
    {
        _library.Lend(_packet);
        Assert.Equal(LendingRules.AlreadyOutCode, Lend([]).Refusal?.Code);
    }

    [Fact]
    public void A_picked_packet_is_kept_for_its_request()
    {
        var request = _library.Do(LendingRules.Request(_library.Ids.Next<RequestId>(), _library.State.Find(_packet.Lot)!, 1, [], Person(9)));
        _library.Do(LendingRules.Pick(_library.State.Find(request.Request)!, Now, []));
        Assert.Equal(LendingRules.KeptForAnotherCode, Lend([]).Refusal?.Code);
        _library.Do(LendingRules.Lend(_library.Ids.Next<LoanId>(), Now, [], _library.State.Find(request.Request)!, Person(9), Day(2026), null, _library.Today));
        Assert.Equal(PacketStanding.Lent, Now.Standing);
    }

    [Fact]
    public void A_packet_is_not_lent_before_it_was_put_up() =>
        Assert.Equal(SeedRefusals.BeforeParentCode, LendingRules.Lend(new(99), Now, [], null, Member, Day(2019), null, _library.Today).Refusal?.Code);

    [Fact]
    public void Tomorrow_has_not_come_yet() =>
        Assert.Equal(SeedRefusals.FutureCode, LendingRules.Lend(new(99), Now, [], null, Member, _library.Today.AddDays(1), null, _library.Today).Refusal?.Code);

    [Theory]
    [InlineData(LoanEnding.Failed)]
    [InlineData(LoanEnding.Eaten)]
    [InlineData(LoanEnding.NothingCameBack)]
    public void A_loan_can_end_without_seed(LoanEnding ending)
    {
        var loan = _library.Lend(_packet);
        _library.Do(LendingRules.End(loan, Now, ending, Day(2026), _library.Today));
        Assert.Equal((PacketStanding.Used, 0L, Member), (Now.Standing, Now.Stock.Amount, Now.Holder!.Value));
        Assert.Equal(LendingRules.LoanEndedCode, LendingRules.End(_library.State.Find(loan.Id)!, Now, ending, Day(2026), _library.Today).Refusal?.Code);
    }

    [Fact]
    public void An_unopened_packet_goes_back_on_the_shelf()
    {
        var loan = _library.Lend(_packet);
        _library.Do(LendingRules.End(loan, Now, LoanEnding.BroughtBack, Day(2026), _library.Today));
        Assert.Equal((PacketStanding.OnShelf, null), (Now.Standing, Now.Holder));
    }

    [Fact]
    public void A_sown_packet_does_not_go_back_on_the_shelf()
    {
        var loan = _library.Lend(_packet);
        _library.Grow(_packet, loan);
        Assert.Equal(LendingRules.SownAlreadyCode, LendingRules.End(loan, Now, LoanEnding.BroughtBack, Day(2026), _library.Today).Refusal?.Code);
    }

    private Packet Now => _library.State.Find(_packet.Id)!;

    private Outcome<Lent> Lend(Hold[] holds) => LendingRules.Lend(_library.Ids.Next<LoanId>(), Now, holds, null, Member, Day(2026), null, _library.Today);
}
