using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests.Rules;

public class NamingRulesTests
{
    private static readonly NodeId _lot = new(2);
    private static readonly NodeId _packet = new(3);
    private static readonly HashSet<NodeId> _below = [_lot, _packet];

    [Fact]
    public void A_variety_is_never_claimed_from_looks() =>
        Assert.Equal(NamingRules.VarietyFromLooksCode, Claim("Ember", new("207", null, null, true, null)));

    [Fact]
    public void A_species_may_be_claimed_from_looks() => Assert.Null(Claim(null, new("207", null, null, true, null)));

    [Theory]
    [InlineData(OriginLink.Loan)]
    [InlineData(OriginLink.PacketCode)]
    [InlineData(OriginLink.DonorRecord)]
    public void An_origin_that_leads_to_the_lot_carries_a_variety(OriginLink link) =>
        Assert.Null(Claim("Ember", new("207", link, _packet, true, null)));

    [Fact]
    public void An_origin_elsewhere_carries_no_variety() =>
        Assert.Equal(NamingRules.NotItsOriginCode, Claim("Ember", new("207", OriginLink.Loan, new(77), true, null)));

    [Fact]
    public void A_trait_that_contradicts_stops_the_variety() =>
        Assert.Equal(NamingRules.DoesNotFitCode, Claim("Ember", new("207", OriginLink.Loan, _packet, false, null)));

    [Fact]
    public void A_determination_needs_its_case() => Assert.Equal(NamingRules.EvidenceCode, Claim("Ember", null));

    [Fact]
    public void A_donors_word_needs_a_donor() =>
        Assert.Equal(NamingRules.WhoCode, NamingRules.Claim(new(new(9), _lot, null, "Ember", ClaimGrounds.DonorsWord, null, Day(2026), null), Day(2020), _below, Day(2026)).Refusal?.Code);

    [Fact]
    public void A_label_alone_speaks_without_a_person() =>
        Assert.True(NamingRules.Claim(new(new(9), _lot, null, "Ember", ClaimGrounds.LabelOnly, null, Day(2026), null), Day(2020), _below, Day(2026)).IsAllowed);

    private static string? Claim(string? variety, DeskEvidence? evidence) =>
        NamingRules.Claim(new(new(9), _lot, "capsicum-annuum", variety, ClaimGrounds.DeskDetermination, Librarian, Day(2026), evidence), Day(2020), _below, Day(2026)).Refusal?.Code;
}
