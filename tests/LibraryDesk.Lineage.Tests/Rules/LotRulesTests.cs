using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests.Rules;

public class LotRulesTests
{
    private readonly TestLibrary _library = new();

    [Fact]
    public void A_lot_takes_all_of_its_accession_and_no_more()
    {
        var accession = _library.Receive(Quantity.OfSeeds(100));
        Assert.Equal(SeedRefusals.MoreThanThereCode, From(accession, Quantity.OfSeeds(101)).Refusal?.Code);
        var lot = _library.LotOf(accession);
        Assert.Equal((100, 0), (lot.Stock.Amount, _library.State.Find(accession.Id)!.Stock.Amount));
    }

    [Fact]
    public void A_lot_is_not_made_before_its_seed_came() =>
        Assert.Equal(SeedRefusals.BeforeParentCode, LotRules.FromAccession(_library.New(Day(2019)), Of(_library.Receive(Quantity.OfSeeds(10), 2020)), _library.Today).Refusal?.Code);

    [Fact]
    public void Lots_of_two_species_are_not_blended() =>
        Assert.Equal(LotRules.OtherSpeciesCode, Blend(_library.Lot(10), _library.Lot(10, species: "capsicum-baccatum")).Refusal?.Code);

    [Fact]
    public void Seed_of_unknown_species_is_not_blended() =>
        Assert.Equal(LotRules.SpeciesUnknownCode, Blend(_library.Lot(10), _library.Lot(10, species: null)).Refusal?.Code);

    [Fact]
    public void Held_seed_is_not_blended()
    {
        var (one, two) = (_library.Lot(10), _library.Lot(10));
        var hold = _library.Hold(one.Id.Node);
        var outcome = LotRules.Blend(_library.New(Day(2021)), [_library.Taking(one, null, hold), _library.Taking(two, null)], _library.Today);
        Assert.Equal(SeedRefusals.OnHoldCode, outcome.Refusal?.Code);
    }

    [Fact]
    public void One_lot_does_not_stand_twice_in_a_blend()
    {
        var lot = _library.Lot(10);
        Assert.Equal(LotRules.TwiceCode, Blend(lot, lot).Refusal?.Code);
    }

    [Fact]
    public void Weighed_lots_blend_by_seed_count_not_by_weight()
    {
        // 10 g of large seed (10 g a thousand) is 1000 seeds; 10 g of small (5 g a thousand) is 2000: shares 1/3 and 2/3.
        var large = _library.LotOf(_library.Receive(Quantity.OfMilligrams(10_000), thousand: 10_000));
        var small = _library.LotOf(_library.Receive(Quantity.OfMilligrams(10_000), thousand: 5_000));
        var blend = _library.Blend(Day(2021), (large, null), (small, null));
        var shares = _library.State.Edges.Where(edge => edge.Child == blend.Id.Node).OrderBy(edge => edge.Parent.Value).Select(edge => edge.Share);
        Assert.Equal([1.0 / 3, 2.0 / 3], shares);
        Assert.Equal(Quantity.OfMilligrams(20_000), blend.Stock);
        Assert.Equal(6667, blend.ThousandSeedMilligrams);
    }

    [Fact]
    public void Counted_and_weighed_seed_blend_only_when_the_seed_weight_is_known()
    {
        var counted = _library.Lot(500);
        var weighed = _library.LotOf(_library.Receive(Quantity.OfMilligrams(6200)));
        Assert.Equal(1500, _library.Blend(Day(2021), (counted, null), (weighed, null)).Stock.Amount);
        var unknown = _library.LotOf(_library.Receive(Quantity.OfMilligrams(6200), thousand: null));
        Assert.Equal(SeedRefusals.SeedWeightCode, Blend(_library.Lot(10), unknown).Refusal?.Code);
    }

    [Fact]
    public void More_packets_than_the_lot_can_fill_are_refused()
    {
        var lot = _library.Lot(25);
        var packets = Enumerable.Range(1, 3).Select(number => new NewPacket(new(1000 + number), new('Q', 2026, number), Quantity.OfSeeds(10))).ToArray();
        var refusal = PackingRules.PutUp(lot, [], packets, Day(2026), null, _library.Today).Refusal;
        Assert.Equal(SeedRefusals.MoreThanThereCode, refusal?.Code);
        Assert.Contains("3 packets asked for, but 25 seeds will do for 2 only", refusal!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_packet_that_cannot_be_filled_is_said_to_be_one()
    {
        var refusal = PackingRules.PutUp(_library.Lot(5), [], [new(new(1001), new('Q', 2026, 1), Quantity.OfSeeds(10))], Day(2026), null, _library.Today).Refusal;
        Assert.StartsWith("1 packet asked for, but 5 seeds will not do for one.", refusal!.Message, StringComparison.Ordinal);
    }

    private static LotTaking Of(Accession accession) => new(SeedStock.Of(accession), accession.Species, null, []);

    private Outcome<LotMade> From(Accession accession, Quantity seed) =>
        LotRules.FromAccession(_library.New(Day(2020)), Of(accession) with { Asked = seed }, _library.Today);

    private Outcome<LotMade> Blend(Lot one, Lot two) =>
        LotRules.Blend(_library.New(Day(2021)), [_library.Taking(one, null), _library.Taking(two, null)], _library.Today);
}
