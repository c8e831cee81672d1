using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Laws;

/// <summary>
/// Rank, reasons and best next look allocate their result and nothing beside it, once buffers have grown to the guide: what the runtime counts on this
/// thread is held against the size of the objects that the result consists of.
/// </summary>
public sealed class AllocationTests
{
    private static readonly CompiledGuide Guide = PepperGuide.Compiled;

    [Fact]
    public void Rank_reasons_and_best_next_look_allocate_their_result_alone()
    {
        foreach (var evidence in Cases())
        {
            Turn(evidence);
            Turn(evidence);
            var sizes = new ObjectSizes(Guide, Prior.OfGuide, evidence);
            var (bytes, result) = MeasureSettled(evidence, sizes);
            Assert.InRange(bytes, 1, sizes.Of(result));
        }
    }

    [Fact]
    public void The_measure_sees_one_object_too_many()
    {
        var evidence = Cases()[0];
        Turn(evidence);
        var sizes = new ObjectSizes(Guide);
        Assert.Equal(0, sizes.Of(Guide));
        // The least of a few: what the runtime puts on this thread now and then only adds.
        var (bytes, kept) = Enumerable.Range(0, 5).Select(_ => OneMore()).MinBy(one => one.Bytes);
        Assert.Equal(bytes, sizes.Of(kept));
    }

    private static (long Bytes, object[] Kept) OneMore()
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var kept = new object[4];
        return (GC.GetAllocatedBytesForCurrentThread() - before, kept);
    }

    /// <summary>
    /// Code that the runtime has not optimised yet puts values on the heap that the finished code does not, and a method may be back in that
    /// state for some calls at any time. So turns are taken until one keeps to its result, each round after the compiler had time; code that
    /// allocates more once it is finished never gets there.
    /// </summary>
    private static (long Bytes, Result Result) MeasureSettled(Evidence evidence, ObjectSizes sizes)
    {
        for (var round = 0; ; round++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var result = Turn(evidence);
            var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            if (bytes <= sizes.Of(result) || round == 20) return (bytes, result);
            for (var turn = 0; turn < 100; turn++) Turn(evidence);
            Thread.Sleep(150);
        }
    }

    private static Result Turn(Evidence evidence)
    {
        var ranking = Ranker.Rank(Guide, evidence, Prior.OfGuide);
        var reasons = ReasonFinder.Between(Guide, evidence, Prior.OfGuide, ranking.Candidates[0].Id, ranking.Candidates[1].Id);
        return new Result(ranking, reasons, LookPlanner.Plan(Guide, evidence, Prior.OfGuide));
    }

    private sealed record Result(Ranking Ranking, ReasonTable? Reasons, LookPlan Plan);

    /// <summary>Nothing answered, one answer, and plants answered in ever more traits, measured ones among them.</summary>
    private static List<Evidence> Cases()
    {
        var answers = Guide.Guide.Traits.Where(t => t.Asked).Select((trait, i) => trait.Kind == TraitKind.Measured
            ? Answer.Measured(trait.Id, MiddleOf(trait.Id))
            : Answer.Of(trait.Id, trait.States[i % trait.States.Count].Id)).ToList();
        return [.. new[] { 0, 1, 3, 8, 20, answers.Count }.Select(n => Evidence.Check(Guide, answers[..n]).Evidence!)];
    }

    private static double MiddleOf(string trait)
    {
        var (low, high) = Guide.Guide.Candidates.Select(c => Guide.UsualRange(c.Id, null, trait)).OfType<(double Low, double High)>().First();
        return Math.Sqrt(low * high);
    }
}
