using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Tests.Looks;

/// <summary>Four plants alike in odds and traits that part them in different ways; the reference is brute force over rankings.</summary>
public sealed class LookAheadTests
{
    [Fact]
    public void A_tie_is_settled_by_what_is_left_for_the_second_look()
    {
        // "left" and "right" tell equally much at one step; which trait is best after them differs.
        var guide = Guide(
            ("lone", [0, 1, 1, 0]),
            ("split", [0, 0, 1, 1]),
            ("left", [0, 1, 2, 2]),
            ("right", [2, 0, 0, 1]));
        var ahead = LookPlanner.Plan(guide, Evidence.None(guide), Prior.Flat).Now;
        Assert.Equal(ahead[0].Bits, ahead[1].Bits, 9);
        Assert.Equal(BestOfTwo(guide), ahead[0].Trait);
    }

    [Fact]
    public void Without_a_tie_nothing_changes()
    {
        var guide = Guide(("clear", [0, 1, 2, 3]), ("half", [0, 0, 1, 1]));
        Assert.Equal("clear", LookPlanner.Plan(guide, Evidence.None(guide), Prior.Flat).Now[0].Trait);
    }

    /// <summary>The same by brute force over rankings: mean drop of entropy over two looks, the second chosen for each answer.</summary>
    private static string BestOfTwo(CompiledGuide guide)
    {
        var plain = LookPlanner.Plan(guide, Evidence.None(guide), Prior.Flat);
        var tied = plain.Now.Where(l => l.BitsPerEffort >= plain.Now[0].BitsPerEffort * 0.97).Take(3);
        return tied.OrderByDescending(first => first.Outlooks.Sum(o => o.Probability * (first.Bits + LookPlanner
            .Plan(guide, Evidence.Check(guide, [Answer.Of(first.Trait, o.State!)]).Evidence!, Prior.Flat).Now.Select(l => l.Bits).DefaultIfEmpty(0).Max()) / 2)).First().Trait;
    }

    private static CompiledGuide Guide(params (string Trait, int[] States)[] traits)
    {
        var candidates = Enumerable.Range(0, 4).Select(c => new Candidate($"plant-{c}", $"Plant {c}", null, CandidateKind.Species, true, 0.25, null, [], null, [], [], [])).ToList();
        var states = Enumerable.Range(0, 4).Select(s => new State($"s{s}", $"state {s}", null, null)).ToList();
        var cells = traits.SelectMany(t => t.States.Select((s, c) => new Cell($"plant-{c}", t.Trait, $"s{s}", null, null, Word.Always, null, null, null, "book", 0))).ToList();
        return CompiledGuide.Compile(new CropGuide("four", "1", "Four plants", "Parva", [new Source("book", "an invented book", "")], [new Stage("any", "Any")], [new Part("plant", "Plant", "any")],
            [.. traits.Select(t => new Trait(t.Trait, t.Trait, "Which?", null, null, "plant", Effort.Look, 1, TraitKind.Unordered, null, false, true, null, null, states, [], "book"))],
            [], candidates, cells, []));
    }
}
