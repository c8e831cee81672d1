using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Web.Features.Labels;

namespace LibraryDesk.Web.Tests.Labels;

public sealed class LabelTextTests
{
    [Fact]
    public void A_claimed_variety_stands_in_quotes() => Assert.Equal("‘Millrace Red’", LabelText.Variety(ALabel.Of()));

    [Fact]
    public void A_straight_apostrophe_is_curly_between_curly_quotes() => Assert.Equal("‘Ferryman’s Lamp’", LabelText.Variety(ALabel.Of(variety: "Ferryman's Lamp")));

    // 7 CFR 201.26 and the model state law: kind and variety, or "variety not stated".
    [Fact]
    public void Without_a_claim_the_variety_is_not_stated() => Assert.Equal("Variety not stated", LabelText.Variety(ALabel.Of(variety: null)));

    [Theory]
    [InlineData(HoldReason.NameInDoubt)]
    [InlineData(HoldReason.Recall)]
    public void A_name_in_doubt_never_goes_on_a_label(HoldReason reason) => Assert.Equal("Variety not stated", LabelText.Variety(ALabel.Of(holds: reason)));

    [Fact]
    public void An_intake_hold_leaves_the_name() => Assert.Equal("‘Millrace Red’", LabelText.Variety(ALabel.Of(holds: HoldReason.IntakeQuarantine)));

    [Fact]
    public void A_blend_of_several_names_says_so() =>
        Assert.Equal("‘Millrace Red’ and others", LabelText.Variety(ALabel.Of() with { Name = new GoesBy("Millrace Red", "capsicum-annuum", OthersToo: true) }));

    [Fact]
    public void A_hybrid_says_so() => Assert.Contains("F1 hybrid", LabelText.AfterSpecies(ALabel.Of() with { IsHybrid = true }), StringComparison.Ordinal);

    [Fact]
    public void Germination_carries_count_month_and_method() =>
        Assert.Equal("Germination 94 % (47 of 50), Jun 2026, home test", LabelText.Germination(ALabel.Of(tested: ALabel.Tested((50, 47)))));

    [Fact]
    public void Replicates_are_counted() =>
        Assert.Equal("Germination 91 % (91 of 100), Jun 2026, 2 replicates", LabelText.Germination(ALabel.Of(tested: ALabel.Tested((50, 45), (50, 46)))));

    [Fact]
    public void Untested_seed_says_so() => Assert.Equal("Germination not tested", LabelText.Germination(ALabel.Of()));

    // Pepper: 55 in 100 in the US (7 CFR 201.31), 65 in the EU (Directive 2002/55/EC, Annex II, from memory). The mark is printed under either.
    [Theory]
    [InlineData(27, true)]
    [InlineData(32, true)]
    [InlineData(33, false)]
    public void Below_a_listed_minimum_it_is_below_standard(int up, bool below) =>
        Assert.Equal(below, LabelText.IsBelowStandard(ALabel.Of(tested: ALabel.Tested((50, up)))));

    [Fact]
    public void Treatment_is_never_guessed() => Assert.Equal("Treatment not stated", LabelText.Treatment(saysUntreated: false));

    [Fact]
    public void A_short_notice_stands_on_the_label() =>
        Assert.Equal("Quillbrook. For growing at home.", LabelText.Library(new LibrarySettingsRow { Name = "Quillbrook", SharingNotice = "For growing at home." }));

    [Fact]
    public void A_long_notice_is_behind_the_code() =>
        Assert.Contains("scan the code", LabelText.Library(new LibrarySettingsRow { SharingNotice = new string('x', 200) }), StringComparison.Ordinal);

    [Theory]
    [InlineData("", "http://127.0.0.1:5000/", "http://127.0.0.1:5000/p/")]
    [InlineData("https://desk.example.org", "http://127.0.0.1:5000", "https://desk.example.org/p/")]
    public void The_code_leads_to_the_packet_under_the_address_set(string set, string asked, string expected) =>
        Assert.StartsWith(expected, LabelText.Address(ALabel.Of(), new LibrarySettingsRow { PublicAddress = set }, asked), StringComparison.Ordinal);

    [Fact]
    public void A_lot_leads_to_its_own_page() =>
        Assert.Equal("https://a.example/lots/L26-031", LabelText.Address(ALabel.Of() with { Code = "L26-031", IsLot = true }, new LibrarySettingsRow(), "https://a.example"));
}
