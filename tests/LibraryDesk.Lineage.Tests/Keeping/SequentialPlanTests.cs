using LibraryDesk.Lineage.Keeping;

namespace LibraryDesk.Lineage.Tests.Keeping;

public sealed class SequentialPlanTests
{
    // Wald 1945: with bounds log((1 - r)/r) the true chance of a wrong word at either edge is at most r/(1 - r). Worked out here
    // exactly, seed by seed, by walking all ways a test can go.
    [Theory]
    [InlineData(0.85)]
    [InlineData(0.68)]
    public void A_wrong_word_at_the_edges_is_no_likelier_than_Wald_allows(double threshold)
    {
        var plan = new SequentialPlan(threshold, mostSeeds: 1000);
        var most = plan.Risk / (1 - plan.Risk);
        Assert.True(Chance(plan, plan.Good, SequentialVerdict.Regrow) <= most);
        Assert.True(Chance(plan, plan.Poor, SequentialVerdict.Keep) <= most);
    }

    [Fact]
    public void The_bounds_say_what_the_verdict_says()
    {
        var plan = new SequentialPlan(0.816);
        foreach (var step in plan.Steps)
        {
            if (step.RegrowAtMost is { } most)
            {
                Assert.Equal(SequentialVerdict.Regrow, plan.After(step.Sown, most));
                Assert.NotEqual(SequentialVerdict.Regrow, plan.After(step.Sown, most + 1));
            }
            if (step.KeepAtLeast is not { } least) continue;
            Assert.Equal(SequentialVerdict.Keep, plan.After(step.Sown, least));
            Assert.NotEqual(SequentialVerdict.Keep, plan.After(step.Sown, least - 1));
        }
    }

    [Fact]
    public void A_test_that_stays_open_to_its_end_is_said_to_be_open()
    {
        var plan = new SequentialPlan(0.85);
        Assert.Equal(SequentialVerdict.StillOpen, plan.After(plan.MostSeeds, (int)(plan.MostSeeds * 0.85)));
    }

    private static double Chance(SequentialPlan plan, double germinates, SequentialVerdict verdict)
    {
        var (open, said) = (new Dictionary<int, double> { [0] = 1 }, 0.0);
        for (var sown = plan.GroupSize; sown <= plan.MostSeeds; sown += plan.GroupSize)
        {
            var next = new Dictionary<int, double>();
            foreach (var (before, chance) in open)
            {
                for (var more = 0; more <= plan.GroupSize; more++)
                {
                    var all = before + more;
                    var part = chance * Binomial(plan.GroupSize, more, germinates);
                    var word = plan.After(sown, all);
                    if (word == verdict) said += part;
                    else if (word == SequentialVerdict.GoOn) next[all] = next.GetValueOrDefault(all) + part;
                }
            }
            open = next;
        }
        return said;
    }

    private static double Binomial(int count, int hits, double chance)
    {
        var ways = 1.0;
        for (var k = 0; k < hits; k++) ways = ways * (count - k) / (k + 1);
        return ways * Math.Pow(chance, hits) * Math.Pow(1 - chance, count - hits);
    }
}
