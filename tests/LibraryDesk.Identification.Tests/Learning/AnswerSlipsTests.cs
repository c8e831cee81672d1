using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Identification.Record;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Learning;

public sealed class AnswerSlipsTests
{
    private const double Weight = ObserverReliability.Weight;

    /// <summary>A guide in which every kind shows one state and, but for a part in 10^12, no other: each answer is plainly right or a slip.</summary>
    private static readonly CompiledGuide Plain = CompiledGuide.Compile(SmallGuide.Compiled.Guide with
    {
        Cells = [.. SmallGuide.Compiled.Guide.Cells.Where(c => c.Trait != "spots")],
        Counts = [new CountRow("parva-alba", "spots", "absent", 1e6, null, null, "book", 0), new CountRow("parva-nigra", "spots", "present", 1e6, null, null, "book", 0)],
        Smoothing = 1e-6,
    });

    private static (string Taxon, Evidence Evidence) Plant(CompiledGuide guide, string taxon, params IReadOnlyList<Answer> answers) => (taxon, Evidence.OfKnown(guide, answers));

    private static AnswerCount Only(AnswerSlips slips) => Assert.Single(slips.Counts());

    /// <summary>
    /// The beta law in closed form: prior mean m with weight w, n answers of which k are right, gives the mean (w m + k) / (w + n)
    /// (T. Bayes 1763; any textbook, conjugate prior of the binomial law).
    /// </summary>
    [Theory]
    [InlineData(12, 12)]
    [InlineData(12, 9)]
    [InlineData(40, 0)]
    public void Plain_answers_give_the_mean_of_the_beta_law(int answers, int right)
    {
        var slips = AnswerSlips.Of(Plain, [.. Enumerable.Range(0, answers).Select(i => Plant(Plain, i % 2 == 0 ? "parva-alba" : "parva-nigra", Answer.Of("spots", i < right == (i % 2 == 0) ? "absent" : "present")))]);
        Assert.Equal(answers, Only(slips).Count);
        Assert.Equal(right, Only(slips).Right, 4);
        var learned = CompiledGuide.Compile(Plain.Guide with { Answers = slips.Counts() }).ReliabilityOf("spots")!;
        Assert.Equal(((Weight * 0.99) + right) / (Weight + answers), learned.Sure, 6);
        Assert.Equal(0.90, learned.Fairly, 12);
    }

    /// <summary>
    /// By hand, where answers are not plain: a kind that shows "present" in half its plants. A careful answer says it with 1/2 and a slip with 1/2,
    /// so it tells nothing of slips: each counts as right with the reliability itself, and that stays what the guide says.
    /// </summary>
    [Fact]
    public void Answers_that_fit_either_way_leave_the_guide_s_word_as_it_is()
    {
        var half = CompiledGuide.Compile(Plain.Guide with
        {
            Counts = [.. Plain.Guide.Counts, new CountRow("parva-alba", "spots", "present", 1e6, null, null, "book", 0)],
        });
        var slips = AnswerSlips.Of(half, [.. Enumerable.Range(0, 30).Select(i => Plant(half, "parva-alba", Answer.Of("spots", i % 3 == 0 ? "present" : "absent")))]);
        Assert.Equal(30 * 0.99, Only(slips).Right, 4);
    }

    [Fact]
    public void Others_who_saw_the_same_flower_outvote_a_slip_and_the_table()
    {
        // Against the table: three say present of a kind that shows it in one plant of five, one says absent.
        var guide = CompiledGuide.Compile(Plain.Guide with
        {
            Counts = [.. Plain.Guide.Counts, new CountRow("parva-alba", "spots", "present", 25e4, null, null, "book", 0)],
        });
        string[] said = ["present", "present", "present", "absent"];
        var slips = AnswerSlips.Of(guide, [Plant(guide, "parva-alba", [.. said.Select((state, i) => Answer.Of("spots", state) with { Person = $"p{i}" })])]);
        Assert.Equal(3, Only(slips).Right, 1);
    }

    [Fact]
    public void Degrees_of_sureness_are_counted_apart_and_what_says_nothing_is_not_counted()
    {
        var slips = AnswerSlips.Of(Plain,
        [
            Plant(Plain, "parva-alba", Answer.Of("spots", "absent"), Answer.Of("hairs", "none", "few", "many")),
            Plant(Plain, "parva-nigra", Answer.Of("spots", "absent") with { Sure = Sureness.Faint }),
            Plant(Plain, "something-else", Answer.Of("spots", "absent")),
            Plant(Plain, "falsa-parva", Answer.Of("spots", "absent")),
        ]);
        Assert.Equal([("spots", Sureness.Sure, 1.0, 1.0), ("spots", Sureness.Faint, 0.0, 1.0)], slips.Counts().Select(c => (c.Trait, c.Sure, Math.Round(c.Right, 4), c.Count)));
    }

    [Fact]
    public void A_number_far_from_the_kind_s_range_is_a_slip_and_one_inside_it_is_not()
    {
        var guide = SmallGuide.Compiled;
        Assert.InRange(Only(AnswerSlips.Of(guide, [Plant(guide, "parva-nigra", Answer.Measured("leaf_mm", 42))])).Right, 0.99, 1);
        Assert.InRange(Only(AnswerSlips.Of(guide, [Plant(guide, "parva-nigra", Answer.Measured("leaf_mm", 5))])).Right, 0, 0.3);
    }

    [Fact]
    public void A_plant_left_out_is_as_if_it_had_never_been_seen_where_answers_are_plain()
    {
        var (first, second) = (Plant(Plain, "parva-alba", Answer.Of("spots", "absent")), Plant(Plain, "parva-alba", Answer.Of("spots", "present")));
        var alone = Only(AnswerSlips.Of(Plain, [first]));
        var without = Assert.Single(AnswerSlips.Of(Plain, [first, second]).CountsWithout(1));
        Assert.Equal((alone.Trait, alone.Sure, alone.Count), (without.Trait, without.Sure, without.Count));
        Assert.Equal(alone.Right, without.Right, 4);
        Assert.Empty(AnswerSlips.Of(Plain, [first]).CountsWithout(0));
    }

    [Fact]
    public void Counts_of_answers_stand_apart_in_the_guide_s_text_and_go_with_the_counts_of_plants()
    {
        var learned = Plain.Guide with { Answers = AnswerSlips.Of(Plain, [Plant(Plain, "parva-alba", Answer.Of("spots", "present"))]).Counts() };
        var read = GuideFile.Read(GuideText.Write(learned));
        Assert.Empty(read.Faults);
        Assert.Equal(learned.Answers, read.Guide!.Answers.Select(a => a with { Line = 0 }));
        Assert.True(DeterminedCounts.AreIn(learned));
        Assert.Empty(DeterminedCounts.WithoutIn(learned).Answers);
        var change = Assert.Single(Identification.Editing.GuideDifference.Between(Plain.Guide, learned).Changes);
        Assert.Equal(("spots", "answers given as sure", null, "0 right of 1 [determined]"), (change.Of, change.What, change.Was, change.Is));
    }

    [Theory]
    [InlineData("spots", 3, 2)]
    [InlineData("spots", -1, 2)]
    [InlineData("nowhere", 1, 2)]
    public void Impossible_counts_of_answers_are_faults(string trait, double right, double count)
    {
        var guide = Plain.Guide with { Answers = [new AnswerCount(trait, Sureness.Sure, right, count, "determined", 0)] };
        Assert.NotEmpty(GuideFile.Read(GuideText.Write(guide)).Faults);
    }

    [Fact]
    public void What_is_shown_is_what_a_version_would_reckon_with()
    {
        IReadOnlyList<RerunPlant> plants =
        [
            .. Enumerable.Range(0, 20).Select(i => new RerunPlant($"{i}", "parva-alba", [Answer.Of("spots", i < 15 ? "absent" : "present")], IsProof: true)),
            new RerunPlant("x", "parva-alba", [Answer.Of("spots", "present")], IsProof: false),
        ];
        var shown = Assert.Single(LearnedReliability.Of(Plain.Guide, plants));
        Assert.Equal((0.99, 20.0), (shown.Stated, shown.Count));
        Assert.Equal(CompiledGuide.Compile(GuideRerun.ToPublish(Plain.Guide, isLearning: true, plants)).ReliabilityOf("spots")!.Sure, shown.Learned, 9);
        Assert.Equal(shown.Low, BetaInterval.Quantile((Weight * 0.99) + shown.Right, (Weight * 0.01) + 20 - shown.Right, 0.025), 12);
        Assert.InRange(shown.Learned, shown.Low, shown.High);
    }
}
