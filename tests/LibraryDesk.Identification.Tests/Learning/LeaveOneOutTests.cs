using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Tests.Learning;

/// <summary>Leave-one-out figures of a plain naive Bayes with add-one smoothing, from the SOURCE.md beside the data; no observer error, no temper.</summary>
public sealed class LeaveOneOutTests
{
    private static readonly LearnOptions PlainBayes = new("set", "1", "Open set", Smoothing: 1, IsUnseenSmoothed: true, Temper: 1, DistinctForMeasured: 100);

    [SkippableFact]
    public void Zoo() => Check(OpenSets.Zoo(), 0.9406, 0.1257);

    [SkippableFact]
    public void Soybean() => Check(OpenSets.Soybean(), 0.9312, 0.3719);

    [SkippableFact]
    public void Iris_cut_in_thirds() => Check(OpenSets.IrisInThirds(), 0.9333, 0.1821);

    [SkippableTheory]
    [InlineData("legs", 1.3630)]
    [InlineData("milk", 0.9743)]
    [InlineData("toothed", 0.8657)]
    [InlineData("eggs", 0.8301)]
    [InlineData("hair", 0.7907)]
    [InlineData("feathers", 0.7179)]
    public void First_question_information_on_zoo(string trait, double bits)
    {
        var look = LookPlanner.Plan(Unsmoothed(), Evidence.None(Unsmoothed()), Prior.OfGuide, most: 16).Now.Single(l => l.Trait == trait);
        Assert.Equal(bits, look.Bits, 4);
    }

    [SkippableFact]
    public void Entropy_of_the_zoo_types() =>
        Assert.Equal(2.3906, Ranker.Rank(Unsmoothed(), Evidence.None(Unsmoothed()), Prior.OfGuide).EntropyBits, 4);

    private static void Check(List<LabelledCase> cases, double accuracy, double logLoss)
    {
        var evaluation = GuideEvaluation.CrossValidated(cases, [.. Enumerable.Range(0, cases.Count)], PlainBayes);
        Assert.Equal(accuracy, evaluation.Record.Accuracy, 4);
        Assert.Equal(logLoss, evaluation.Record.LogLoss, 4);
    }

    /// <summary>Information is reckoned there from plain shares: next to no smoothing, and types by their number of animals.</summary>
    private static CompiledGuide Unsmoothed()
    {
        var cases = OpenSets.Zoo();
        var guide = GuideLearner.Learn(cases, PlainBayes with { Smoothing = 1e-9 });
        var counts = cases.GroupBy(c => GuideLearner.IdOf(c.Taxon)).ToDictionary(g => g.Key, g => g.Count() / (double)cases.Count);
        return CompiledGuide.Compile(guide with { Candidates = [.. guide.Candidates.Select(c => c with { Prior = counts[c.Id] })] });
    }
}
