using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Lineage;

namespace LibraryDesk.Desk.Tests.Review;

public sealed class DeterminationRulesTests
{
    private const string Annuum = "capsicum-annuum";
    private static readonly CropGuide Guide = BuiltInGuides.Open("capsicum")!.Guide!;
    private static readonly OriginOfCase Loan = new("Q26-0418-H", Annuum, ["Harrow Red"], Fit.Fits);

    [Fact]
    public void A_species_can_be_determined_without_an_origin() =>
        Assert.Null(Check(new NamedTaxon(Annuum)));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("  ")]
    public void A_variety_needs_an_origin(string? code) =>
        Assert.Equal(DeterminationRules.NeedsOriginCode, Check(new NamedTaxon(Annuum), "Harrow Red", code, Loan)?.Code);

    [Fact]
    public void A_variety_by_a_loan_that_fits_may_be_determined() =>
        Assert.Null(Check(new NamedTaxon(Annuum), "Harrow Red", "q26-0418-h", Loan));

    [Fact]
    public void A_packet_that_the_case_does_not_lead_to_gives_no_variety() =>
        Assert.Equal(DeterminationRules.NotFromCaseCode, Check(new NamedTaxon(Annuum), "Harrow Red", "Q26-0418-H")?.Code);

    [Fact]
    public void A_lot_passes_on_only_the_names_claimed_for_it() =>
        Assert.Equal(DeterminationRules.NameNotClaimedCode, Check(new NamedTaxon(Annuum), "Other Red", Loan.PacketCode, Loan)?.Code);

    [Theory]
    [InlineData(Fit.FitsPoorly)]
    [InlineData(Fit.DoesNotFit)]
    public void Traits_that_speak_against_the_packet_stop_the_variety(Fit fit) =>
        Assert.Equal(DeterminationRules.TraitsContradictCode, Check(new NamedTaxon(Annuum), "Harrow Red", Loan.PacketCode, Loan with { Fit = fit })?.Code);

    [Fact]
    public void A_plant_of_another_species_cannot_take_the_lots_name() =>
        Assert.Equal(DeterminationRules.OtherSpeciesCode, Check(new NamedTaxon("capsicum-chinense"), "Harrow Red", Loan.PacketCode, Loan)?.Code);

    [Fact]
    public void What_is_only_akin_to_a_species_is_no_variety_of_it() =>
        Assert.Equal(DeterminationRules.AkinCode, Check(new NamedTaxon(Annuum, Qualifiers.Aff), "Harrow Red", Loan.PacketCode, Loan)?.Code);

    [Theory]
    [InlineData("capsicum-inventum")]
    [InlineData(NamedTaxon.CannotTell)]
    public void Only_a_candidate_of_the_guide_can_be_determined(string taxon) =>
        Assert.Equal(ReviewRefusals.UnknownTaxonCode, Check(new NamedTaxon(taxon))?.Code);

    [Fact]
    public void A_qualifier_is_none_cf_or_aff()
    {
        Assert.Null(Check(new NamedTaxon(Annuum, "cf.")));
        Assert.Equal(ReviewRefusals.UnknownQualifierCode, Check(new NamedTaxon(Annuum, "var."))?.Code);
    }

    [Fact]
    public void A_plant_tied_to_one_packet_takes_the_name_its_lot_claims()
    {
        var made = DeterminationRules.ByOrigin(new NamedTaxon(Annuum), Guide, [Loan with { IsTied = true }]);
        Assert.Equal(("Harrow Red", Loan.PacketCode), (made.VarietyName, made.PacketCode));
    }

    [Fact]
    public void A_loan_alone_names_nothing_by_itself() =>
        Assert.Equal(new DeterminationWanted(new NamedTaxon(Annuum), null, null), DeterminationRules.ByOrigin(new NamedTaxon(Annuum), Guide, [Loan]));

    [Theory]
    [InlineData("capsicum-chinense", "", Fit.Fits)]
    [InlineData(Annuum, Qualifiers.Aff, Fit.Fits)]
    [InlineData(Annuum, "", Fit.DoesNotFit)]
    public void An_off_type_takes_nothing_from_its_packet(string taxon, string qualifier, Fit fit)
    {
        var named = new NamedTaxon(taxon, qualifier);
        foreach (var names in new string[][] { ["Harrow Red"], [] })
        {
            var made = DeterminationRules.ByOrigin(named, Guide, [Loan with { IsTied = true, Fit = fit, VarietyNames = names }]);
            Assert.Equal(new DeterminationWanted(named, null, null), made);
        }
    }

    [Fact]
    public void Of_two_packets_that_both_claim_the_plant_neither_names_it() =>
        Assert.Null(DeterminationRules.ByOrigin(new NamedTaxon(Annuum), Guide, [Loan with { IsTied = true }, Loan with { IsTied = true, PacketCode = "Q26-0419-K" }]).PacketCode);

    [Fact]
    public void Nobody_reviews_or_determines_their_own_case()
    {
        var id = Guid.NewGuid();
        var own = ACase(owner: id);
        Assert.Equal(ReviewRefusals.OwnCaseCode, ReviewRules.MayGiveOpinion(Actor.Volunteer(id), own)?.Code);
        Assert.Equal(ReviewRefusals.OwnCaseCode, ReviewRules.MayDetermineAlone(Actor.Librarian(id), own)?.Code);
    }

    [Fact]
    public void Who_filed_it_at_the_counter_saw_the_odds_and_gives_no_opinion()
    {
        var id = Guid.NewGuid();
        Assert.Equal(CaseRefusals.OwnCaseCode, ReviewRules.MayGiveOpinion(Actor.Volunteer(id), ACase(filedFor: id))?.Code);
    }

    [Fact]
    public void Members_do_not_review_and_volunteers_do_not_determine_alone()
    {
        Assert.Equal(PeopleRefusals.MayNotCode, ReviewRules.MayGiveOpinion(Actor.Member(Guid.NewGuid()), ACase())?.Code);
        Assert.Equal(PeopleRefusals.MayNotCode, ReviewRules.MayDetermineAlone(Actor.Volunteer(Guid.NewGuid()), ACase())?.Code);
        Assert.Equal(PeopleRefusals.SignInCode, ReviewRules.MayGiveOpinion(Actor.Visitor, ACase())?.Code);
    }

    [Theory]
    [InlineData(CaseState.Open, null)]
    [InlineData(CaseState.WaitingForLook, null)]
    [InlineData(CaseState.Determined, ReviewRefusals.NotOpenCode)]
    [InlineData(CaseState.Closed, ReviewRefusals.NotOpenCode)]
    public void Opinions_are_taken_while_the_case_is_open(CaseState state, string? code)
    {
        var row = ACase();
        row.State = state;
        Assert.Equal(code, ReviewRules.MayGiveOpinion(Actor.Volunteer(Guid.NewGuid()), row)?.Code);
    }

    [Fact]
    public void My_seal_opens_the_odds_and_the_second_seal_opens_the_opinions()
    {
        Guid me = Guid.NewGuid(), other = Guid.NewGuid();
        Assert.Equal(new Opened(false, false), ReviewRules.OpenTo(me, []));
        Assert.Equal(new Opened(false, false), ReviewRules.OpenTo(me, [other]));
        Assert.Equal(new Opened(true, false), ReviewRules.OpenTo(me, [me]));
        Assert.Equal(new Opened(true, true), ReviewRules.OpenTo(me, [other, me]));
    }

    private static CaseRow ACase(Guid? owner = null, Guid? filedFor = null) => new()
    {
        Title = "Pepper in an unmarked pot",
        GuideId = "capsicum",
        GuideVersion = Guide.Version,
        State = CaseState.Open,
        FiledAt = DateTimeOffset.UnixEpoch,
        OwnerId = owner,
        FiledForById = filedFor,
    };

    private static Refusal? Check(NamedTaxon taxon, string? variety = null, string? code = null, params OriginOfCase[] origins) =>
        DeterminationRules.Check(new DeterminationWanted(taxon, variety, code), Guide, origins);
}
