using LibraryDesk.Identification.Consensus;
using LibraryDesk.Identification.Tests.Learning;

namespace LibraryDesk.Identification.Tests.Consensus;

public sealed class ConsensusTests
{
    /// <summary>Dawid and Skene 1979, Table 1; shares and patients as computed from it without smoothing, started from the vote shares.</summary>
    [SkippableFact]
    public void Dawid_and_Skene_s_patients()
    {
        var votes = ReferenceData.Table("consensus/dawid-skene-1979-long.csv").Rows
            .Select(r => new Vote((int)OpenSets.Number(r[0]) - 1, (int)OpenSets.Number(r[1]) - 1, (int)OpenSets.Number(r[2]) - 1)).ToList();
        var fit = DawidSkene.Fit(votes, 45, 5, 4)!;
        Assert.Equal([0.4000, 0.4216, 0.1118, 0.0667], fit.ClassShares.Select(s => Math.Round(s, 4)));
        Assert.Equal(-190.731, fit.LogLikelihood, 3);
        Assert.Equal(0.9482, fit.ItemPosteriors[34][1], 4);
        Assert.Equal(0.0518, fit.ItemPosteriors[34][2], 4);
        Assert.Equal(0.9787, fit.ItemPosteriors[37][2], 4);
        Assert.Equal(1, fit.ErrorRates[2][0][0], 3);
    }

    /// <summary>Fleiss 1971: kappa 0.430; by category .245 .245 .520 .471 .566.</summary>
    [SkippableFact]
    public void Fleiss_s_diagnoses()
    {
        var counts = ReferenceData.Table("consensus/fleiss-1971.csv").Rows
            .Select(r => (IReadOnlyList<int>)[.. Enumerable.Range(1, 5).Select(c => r[1..].Count(v => (int)OpenSets.Number(v) == c))]).ToList();
        var kappa = Agreement.Fleiss(counts)!;
        Assert.Equal(0.430, kappa.Kappa, 3);
        Assert.Equal(0.5556, kappa.Observed, 4);
        Assert.Equal(0.2199, kappa.ByChance, 4);
        Assert.Equal([0.245, 0.245, 0.520, 0.471, 0.566], kappa.ByClass.Select(k => Math.Round(k, 3)));
    }

    /// <summary>Pairs of Fleiss's raters; R package psy gives 0.6511628 for raters 1 and 2.</summary>
    [SkippableTheory]
    [InlineData(1, 2, 0.6511628)]
    [InlineData(2, 3, 0.6311)]
    [InlineData(5, 6, 0.6482)]
    public void Cohen_s_kappa_of_two_raters(int a, int b, double kappa)
    {
        var rows = ReferenceData.Table("consensus/fleiss-1971.csv").Rows;
        List<int> Votes(int rater) => [.. rows.Select(r => (int)OpenSets.Number(r[rater]) - 1)];
        Assert.Equal(kappa, Agreement.Cohen(Votes(a), Votes(b), 5)!.Kappa, 4);
    }

    /// <summary>The usual textbook two by two: 20 yes-yes, 5 yes-no, 10 no-yes, 15 no-no gives 0.70, 0.50 and 0.40 (from memory).</summary>
    [Fact]
    public void Cohen_s_kappa_of_the_textbook()
    {
        List<int> first = [.. Enumerable.Repeat(0, 25), .. Enumerable.Repeat(1, 25)];
        List<int> second = [.. Enumerable.Repeat(0, 20), .. Enumerable.Repeat(1, 5), .. Enumerable.Repeat(0, 10), .. Enumerable.Repeat(1, 15)];
        Assert.Equal(0.40, Agreement.Cohen(first, second, 2)!.Kappa, 12);
    }

    [Fact]
    public void With_a_prior_two_right_votes_do_not_make_a_person_perfect()
    {
        List<Vote> votes = [new(0, 0, 0), new(0, 1, 0), new(1, 0, 1), new(1, 1, 1)];
        Assert.Equal(1, DawidSkene.Fit(votes, 2, 2, 2)!.ErrorRates[0][0][0], 6);
        Assert.InRange(DawidSkene.Fit(votes, 2, 2, 2, rightPrior: 4, wrongPrior: 1)!.ErrorRates[0][0][0], 0.75, 0.9);
    }

    [Fact]
    public void Votes_that_make_no_sense_have_no_fit()
    {
        Assert.Null(DawidSkene.Fit([], 1, 1, 2));
        Assert.Null(DawidSkene.Fit([new Vote(0, 0, 5)], 1, 1, 2));
        Assert.Null(Agreement.Fleiss([[1, 1], [3, 0]]));
    }
}
