using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Reasons;

public sealed class TypicalityFinderTests
{
    private static readonly CompiledGuide Guide = SmallGuide.Compiled;

    [Fact]
    public void The_tail_of_two_outcomes_is_reckoned_by_hand()
    {
        // nigra shows spots 0.998/1.0... of the time; seen through the observer .99/.01. "absent" fits worse than "present",
        // so its mid-p tail is half its own probability.
        var absent = (0.002 / 1.002 * 0.99) + (1 / 1.002 * 0.01);
        Assert.Equal(absent / 2, Of("parva-nigra", Answer.Of("spots", "absent")).Tail, 9);
        Assert.Equal(absent + ((1 - absent) / 2), Of("parva-nigra", Answer.Of("spots", "present")).Tail, 9);
    }

    [Fact]
    public void One_answer_that_does_not_go_with_the_rest_is_named()
    {
        var typicality = Of("parva-nigra", Answer.Of("spots", "present"), Answer.Of("hairs", "none"), Answer.Measured("leaf_mm", 42));
        Assert.NotEqual(TypicalityWord.Ordinary, typicality.Word);
        Assert.Equal("hairs", typicality.IfWrong);
    }

    [Fact]
    public void A_case_without_answers_is_ordinary() => Assert.Equal(1, Of("parva-alba").Tail);

    [Fact]
    public void The_simulated_tail_is_the_same_every_time()
    {
        Answer[] answers = [.. Enumerable.Range(0, 4).Select(i => Answer.Of("hairs", "few") with { Look = $"look {i}" }), Answer.Of("spots", "absent"), Answer.Measured("leaf_mm", 30)];
        var first = Of("parva-alba", answers);
        Assert.False(first.IsExact);
        Assert.Equal(first, Of("parva-alba", answers));
    }

    private static Typicality Of(string candidate, params Answer[] answers) =>
        TypicalityFinder.Of(Guide, Evidence.Check(Guide, answers).Evidence!, Prior.OfGuide, candidate)!;
}
