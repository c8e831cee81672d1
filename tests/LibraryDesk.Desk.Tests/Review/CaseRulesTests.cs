using LibraryDesk.Desk.Cases.Review;

namespace LibraryDesk.Desk.Tests.Review;

public sealed class CaseRulesTests
{
    private const string Annuum = "capsicum-annuum";
    private const string Baccatum = "capsicum-baccatum";
    private const string Chinense = "capsicum-chinense";

    private static readonly TraitsSay ForAnnuum = Traits((Annuum, 0.9), (Chinense, 0.06), (Baccatum, 0.04));

    [Fact]
    public void Two_final_opinions_that_agree_determine_the_case()
    {
        var decision = CaseRules.Decide([Final(Annuum), Final(Annuum)], 2, ForAnnuum);
        Assert.Equal(new NamedTaxon(Annuum), Assert.IsType<Determined>(decision).Taxon);
    }

    [Fact]
    public void One_opinion_of_two_is_not_enough()
    {
        var decision = Assert.IsType<NotYet>(CaseRules.Decide([Final(Annuum)], 2, ForAnnuum));
        Assert.Equal(1, decision.Missing);
    }

    [Fact]
    public void An_opinion_still_in_review_is_waited_for()
    {
        var decision = Assert.IsType<NotYet>(CaseRules.Decide([Final(Annuum), Sealed(Annuum)], 2, ForAnnuum));
        Assert.Equal(1, decision.InReview);
    }

    [Fact]
    public void Two_that_differ_call_for_a_third()
    {
        var decision = Assert.IsType<AnotherWanted>(CaseRules.Decide([Final(Annuum), Final(Chinense)], 2, ForAnnuum));
        Assert.Equal((3, WantedBecause.PeopleDiffer), (decision.Number, decision.Reason));
    }

    [Fact]
    public void A_third_breaks_the_tie()
    {
        var decision = CaseRules.Decide([Final(Annuum), Final(Chinense), Final(Annuum)], 2, ForAnnuum);
        Assert.Equal(Annuum, Assert.IsType<Determined>(decision).Taxon.Taxon);
    }

    [Fact]
    public void Three_that_all_differ_call_for_a_fourth()
    {
        var decision = Assert.IsType<AnotherWanted>(CaseRules.Decide([Final(Annuum), Final(Chinense), Final(Baccatum)], 2, ForAnnuum));
        Assert.Equal(4, decision.Number);
    }

    [Fact]
    public void Two_against_two_is_a_tie_again()
    {
        var decision = CaseRules.Decide([Final(Annuum), Final(Chinense), Final(Annuum), Final(Chinense)], 2, ForAnnuum);
        Assert.Equal(WantedBecause.PeopleDiffer, Assert.IsType<AnotherWanted>(decision).Reason);
    }

    [Fact]
    public void A_sealed_view_that_differs_stands_against_a_single_final_one()
    {
        Assert.IsType<NotYet>(CaseRules.Decide([Final(Annuum), Sealed(Chinense)], 1, ForAnnuum));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void The_library_decides_how_many_must_agree(int needed)
    {
        var enough = Enumerable.Repeat(Final(Annuum), needed).ToList();
        Assert.IsType<Determined>(CaseRules.Decide(enough, needed, ForAnnuum));
        Assert.IsType<NotYet>(CaseRules.Decide(enough.Skip(1).ToList(), needed, ForAnnuum));
    }

    [Fact]
    public void Two_that_agree_on_less_than_one_in_twenty_call_for_a_third()
    {
        var decision = Assert.IsType<AnotherWanted>(CaseRules.Decide([Final(Baccatum), Final(Baccatum)], 2, ForAnnuum));
        Assert.Equal((3, WantedBecause.OddsDiffer), (decision.Number, decision.Reason));
    }

    [Fact]
    public void Exactly_one_in_twenty_is_not_much_below()
    {
        Assert.IsType<Determined>(CaseRules.Decide([Final(Baccatum), Final(Baccatum)], 2, Traits((Annuum, 0.95), (Baccatum, 0.05))));
    }

    [Fact]
    public void Even_where_one_opinion_suffices_the_odds_can_ask_for_more_people()
    {
        Assert.Equal(2, Assert.IsType<AnotherWanted>(CaseRules.Decide([Final(Baccatum)], 1, ForAnnuum)).Number);
    }

    [Fact]
    public void Three_people_who_agree_win_against_the_odds_and_the_grounds_say_so()
    {
        var decision = Assert.IsType<Determined>(CaseRules.Decide([Final(Baccatum), Final(Baccatum), Final(Baccatum)], 2, ForAnnuum));
        Assert.Contains("under 1 in 20", decision.Grounds.InWords("capsicum"), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_of_three_do_not_win_against_the_odds()
    {
        Assert.IsType<AnotherWanted>(CaseRules.Decide([Final(Baccatum), Final(Annuum), Final(Baccatum)], 2, ForAnnuum));
    }

    [Fact]
    public void A_trait_that_decides_against_it_calls_for_a_third_though_the_odds_agree()
    {
        var traits = ForAnnuum with { DecidingAgainst = new Dictionary<string, IReadOnlyList<string>> { [Annuum] = ["Seed colour"] } };
        Assert.Equal(WantedBecause.TraitAgainst, Assert.IsType<AnotherWanted>(CaseRules.Decide([Final(Annuum), Final(Annuum)], 2, traits)).Reason);
        var three = Assert.IsType<Determined>(CaseRules.Decide([Final(Annuum), Final(Annuum), Final(Annuum)], 2, traits));
        Assert.Contains("Seed colour", three.Grounds.InWords("capsicum"), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_cannot_tell_speaks_for_nobody_and_against_nobody()
    {
        var unsure = new OpinionInHand(new NamedTaxon(NamedTaxon.CannotTell), new NamedTaxon(NamedTaxon.CannotTell));
        Assert.Equal(WantedBecause.CouldNotTell, Assert.IsType<AnotherWanted>(CaseRules.Decide([Final(Annuum), unsure], 2, ForAnnuum)).Reason);
        Assert.IsType<Determined>(CaseRules.Decide([Final(Annuum), unsure, Final(Annuum)], 2, ForAnnuum));
        Assert.IsType<AnotherWanted>(CaseRules.Decide([unsure, unsure], 2, ForAnnuum));
    }

    [Fact]
    public void The_more_careful_qualifier_stands()
    {
        var decision = CaseRules.Decide([Final(Annuum), Final(Annuum, Qualifiers.Cf)], 2, ForAnnuum);
        Assert.Equal(new NamedTaxon(Annuum, Qualifiers.Cf), Assert.IsType<Determined>(decision).Taxon);
    }

    // Bengtson 1988, Palaeontology 31: 223-227: aff. is affinity with a species the plant is not; cf. is doubt about the name.
    [Fact]
    public void Akin_to_it_is_another_view_than_it()
    {
        var decision = CaseRules.Decide([Final(Annuum), Final(Annuum, Qualifiers.Aff)], 2, ForAnnuum);
        Assert.Equal(WantedBecause.PeopleDiffer, Assert.IsType<AnotherWanted>(decision).Reason);
    }

    [Fact]
    public void A_view_changed_in_the_review_counts_as_changed_and_the_grounds_say_so()
    {
        var changed = new OpinionInHand(new NamedTaxon(Chinense), new NamedTaxon(Annuum));
        var decision = Assert.IsType<Determined>(CaseRules.Decide([Final(Annuum), changed], 2, ForAnnuum));
        Assert.Contains("in the review", decision.Grounds.InWords("capsicum"), StringComparison.Ordinal);
    }

    [Fact]
    public void No_opinions_decide_nothing()
    {
        Assert.Equal(new NotYet(0, 2), CaseRules.Decide([], 2, ForAnnuum));
    }

    [Fact]
    public void Every_mix_of_three_opinions_is_decided_the_same_in_any_order()
    {
        OpinionInHand[] kinds = [Final(Annuum), Final(Chinense), Final(Annuum, Qualifiers.Aff), Sealed(Annuum), Sealed(Chinense), Final(NamedTaxon.CannotTell)];
        foreach (var a in kinds)
        {
            foreach (var b in kinds)
            {
                foreach (var c in kinds)
                {
                    var one = CaseRules.Decide([a, b, c], 2, ForAnnuum);
                    var other = CaseRules.Decide([c, a, b], 2, ForAnnuum);
                    Assert.Equal(one, other);
                }
            }
        }
    }

    private static OpinionInHand Final(string taxon, string qualifier = "") => new(new NamedTaxon(taxon, qualifier), new NamedTaxon(taxon, qualifier));

    private static OpinionInHand Sealed(string taxon) => new(new NamedTaxon(taxon), null);

    private static TraitsSay Traits(params (string Taxon, double P)[] odds) =>
        new(odds.ToDictionary(o => o.Taxon, o => o.P), new Dictionary<string, IReadOnlyList<string>>());
}
