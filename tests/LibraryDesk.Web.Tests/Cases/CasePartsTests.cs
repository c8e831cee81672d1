using Bunit;
using LibraryDesk.Data.Cases;
using LibraryDesk.Web.Features.Cases;

namespace LibraryDesk.Web.Tests.Cases;

public sealed class CasePartsTests : BunitContext
{
    // What the guide says of thorn apple: a dry, spiny shell.
    private static readonly (string, string)[] ThornApple = [("fruit_inside", "capsule"), ("corolla_shape", "campanulate")];
    private static readonly (string, string)[] Baccatum = [("corolla_spots", "green-yellow")];

    [Fact]
    public void A_look_alike_above_one_in_twenty_brings_its_own_caution()
    {
        var part = Render<CaseCautions>(p => p.Add(c => c.Ranking, ARanking.Of(ThornApple)).Add(c => c.Alikes, true));
        Assert.Contains("thorn apple", part.Markup, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_plain_pepper_brings_no_caution_of_a_look_alike() =>
        Assert.Empty(Render<CaseCautions>(p => p.Add(c => c.Ranking, ARanking.Of(Baccatum)).Add(c => c.Alikes, true)).Markup.Trim());

    [Fact]
    public void Not_to_taste_it_is_always_said() =>
        Assert.Contains("Never taste", Render<CaseCautions>(p => p.Add(c => c.Ranking, ARanking.Of()).Add(c => c.Alikes, false)).Markup, StringComparison.Ordinal);

    [Fact]
    public void Each_reason_opens_to_its_source_its_weight_and_the_guide()
    {
        var part = Render<CaseReasons>(p => p.Add(c => c.View, ARanking.Case(true, Specimen.Plant, Baccatum)).Add(c => c.Ranking, ARanking.Of(Baccatum)));
        var facts = part.Find("details dl").TextContent;
        Assert.Contains("Barboza", facts, StringComparison.Ordinal);
        Assert.Contains("decibans", facts, StringComparison.Ordinal);
        Assert.Contains(ARanking.Peppers.Guide.Version, facts, StringComparison.Ordinal);
    }

    [Fact]
    public void The_owner_can_take_each_answer_back()
    {
        var part = Render<CaseLooks>(p => p.Add(c => c.View, ARanking.Case(true, Specimen.Plant, Baccatum)));
        Assert.Equal("/cases/1/answers/1/take-back", part.Find(".answers form").GetAttribute("action"));
    }

    [Fact]
    public void Others_cannot() =>
        Assert.Empty(Render<CaseLooks>(p => p.Add(c => c.View, ARanking.Case(false, Specimen.Plant, Baccatum))).FindAll("form"));

    [Fact]
    public void The_season_is_waited_for_with_a_plant_and_not_with_seeds_alone()
    {
        Assert.Contains("Worth waiting for", Waiting(Specimen.Plant), StringComparison.Ordinal);
        Assert.Empty(Waiting(Specimen.SeedsAlone).Trim());
    }

    [Fact]
    public void The_best_next_look_leads_to_its_question()
    {
        var view = ARanking.Case(true, Specimen.Plant);
        var part = Render<CaseNextLook>(p => p.Add(c => c.View, view).Add(c => c.Ranking, view.Ranking!));
        Assert.Equal($"/cases/1/ask?trait={view.Ranking!.Plan.Now[0].Trait}", part.Find("a.btn").GetAttribute("href"));
    }

    private string Waiting(Specimen specimen)
    {
        var view = ARanking.Case(true, specimen);
        return Render<CaseWaiting>(p => p.Add(c => c.View, view).Add(c => c.Ranking, view.Ranking!)).Markup;
    }
}
