using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Odds;

/// <summary>Loans of the member as a prior, and possible packets ranked beside the species.</summary>
public sealed class OriginTests
{
    private static readonly CompiledGuide Guide = PepperGuide.Compiled;

    [Fact]
    public void A_plant_surely_from_a_surely_named_packet_is_what_the_packet_says()
    {
        var ranking = Rank("", 1, Packet("P1", "capsicum-pubescens", 1));
        Assert.Equal(1, Of(ranking, "capsicum-pubescens"), 12);
        Assert.Equal(0, ranking.OutsidePackets, 12);
    }

    [Fact]
    public void What_the_name_claims_leave_open_goes_by_the_guide()
    {
        var ranking = Rank("", 1, Packet("P1", "capsicum-pubescens", 0.9));
        Assert.Equal(0.9 + (0.1 * Guide.Guide.FindCandidate("capsicum-pubescens")!.Prior), Of(ranking, "capsicum-pubescens"), 12);
    }

    [Fact]
    public void The_prior_is_the_mixture_of_packets_and_guide()
    {
        var ranking = Rank("", 0.6, Packet("P1", "capsicum-chinense", 1) with { Weight = 20 }, Packet("P2", "capsicum-baccatum", 1) with { Weight = 10 });
        Assert.Equal(0.4, Of(ranking, "P1", packet: true), 12);
        Assert.Equal(0.2, Of(ranking, "P2", packet: true), 12);
        Assert.Equal(0.4 + (0.4 * Guide.Guide.FindCandidate("capsicum-chinense")!.Prior), Of(ranking, "capsicum-chinense"), 12);
    }

    [Fact]
    public void Traits_that_speak_against_a_packet_say_so_whatever_the_loan_says()
    {
        var strong = Rank("seed_colour=black; corolla_colour=purple with white base", 0.99, Packet("P1", "capsicum-annuum", 1));
        var weak = Rank("seed_colour=black; corolla_colour=purple with white base", 0.3, Packet("P1", "capsicum-annuum", 1));
        Assert.Equal(Fit.DoesNotFit, strong.Packets[0].Fit);
        Assert.Equal(weak.Packets[0].TraitDecibans, strong.Packets[0].TraitDecibans, 9);
    }

    [Fact]
    public void Packets_of_one_form_stay_tied_and_the_desk_says_so()
    {
        var ranking = Rank("fruit_shape=blocky", 0.9, Packet("P1", "capsicum-annuum", 1, "bell"), Packet("P2", "capsicum-annuum", 1, "bell"), Packet("P3", "capsicum-annuum", 1, "cayenne"));
        Assert.Equal(Of(ranking, "P1", packet: true), Of(ranking, "P2", packet: true), 12);
        Assert.True(ranking.Packets.Single(p => p.Id == "P1").IsTied);
        Assert.False(ranking.Packets.Single(p => p.Id == "P3").IsTied);
        Assert.Equal("P3", ranking.Packets[^1].Id);
    }

    [Fact]
    public void Traits_of_the_lot_itself_part_packets_of_one_form()
    {
        var purple = Packet("P1", "capsicum-annuum", 1, "bell") with { OwnTraits = [new OwnTrait("fruit_colour_immature", new Dictionary<string, double> { ["purple"] = 1 })] };
        var ranking = Rank("fruit_colour_immature=purple", 0.9, purple, Packet("P2", "capsicum-annuum", 1, "bell"));
        Assert.Equal("P1", ranking.Packets[0].Id);
        Assert.True(ranking.Packets[0].Probability > 0.8);
        Assert.False(ranking.Packets[0].IsTied);
    }

    [Fact]
    public void Candidates_and_packets_together_sum_to_one()
    {
        var ranking = Rank("fruit_shape=lantern; fruit_surface=wrinkled", 0.7, Packet("P1", "capsicum-annuum", 0.8), Packet("P2", "capsicum-chinense", 0.8));
        Assert.Equal(1, ranking.Candidates.Sum(c => c.Probability), 9);
        Assert.Equal(1, ranking.Packets.Sum(p => p.Probability) + ranking.OutsidePackets, 9);
        Assert.Equal("P2", ranking.Packets[0].Id);
    }

    private static PossiblePacket Packet(string id, string candidate, double share, string? form = null) => new(id, 1, [new TaxonShare(candidate, form, share)], []);

    private static Ranking Rank(string answers, double lambda, params PossiblePacket[] packets) =>
        Ranker.Rank(Guide, PepperGuide.Answers(answers), new Prior(Origin: new Origin(lambda, packets)));

    private static double Of(Ranking ranking, string id, bool packet = false) =>
        packet ? ranking.Packets.Single(p => p.Id == id).Probability : ranking.Candidates.Single(c => c.Id == id).Probability;
}
