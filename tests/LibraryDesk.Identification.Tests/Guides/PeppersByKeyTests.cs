namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>The pepper guide against published keys it was not made from.</summary>
public sealed class PeppersByKeyTests
{
    public static TheoryData<string, string, string, string> Agreeing => Data(PublishedKeyPaths.Agreeing);

    public static TheoryData<string, string, string, string> InConflict => Data(PublishedKeyPaths.InConflict);

    [Theory]
    [MemberData(nameof(Agreeing))]
    public void A_path_read_in_a_published_key_leads_to_its_species(string path, string among, string answers, string species)
    {
        var first = Peppers.Rank(answers, among, flat: true).Candidates[0];
        Assert.True(first.Id == species, $"{path} gave {first.Id} at {first.Probability:F3}");
    }

    [Theory]
    [MemberData(nameof(InConflict))]
    public void Where_key_and_monograph_conflict_the_species_of_the_key_stays_a_candidate(string path, string among, string answers, string species)
    {
        var ranking = Peppers.Rank(answers, among, flat: true);
        Assert.True(ranking.Candidates.Single(c => c.Id == species).Probability >= 0.05, $"{path}: {species} fell under 1 in 20");
    }

    [Fact]
    public void The_partly_seen_path_leads_to_its_species()
    {
        var path = PublishedKeyPaths.PartlySeen;
        Assert.Equal(path[3], Peppers.Rank(path[2], path[1], flat: true).Candidates[0].Id);
    }

    private static TheoryData<string, string, string, string> Data(string[][] paths)
    {
        var data = new TheoryData<string, string, string, string>();
        foreach (var path in paths) data.Add(path[0], path[1], path[2], path[3]);
        return data;
    }

    [Fact]
    public void Odds_over_all_candidates_sum_to_one() =>
        Assert.Equal(1, Peppers.Rank("seed_colour=black", null, flat: false).Candidates.Sum(c => c.Probability), 9);
}
