using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Tests.Guides;

namespace LibraryDesk.Identification.Tests.Odds;

public sealed class DueCautionTests
{
    [Fact]
    public void A_look_alike_above_one_in_twenty_brings_its_cautions()
    {
        var due = Of("corolla_shape=campanulate; corolla_colour=purple; fruit_colour_mature=purple-black; fruit_shape=almost round");

        Assert.Contains(due, d => d.Candidate.Id == "atropa-bella-donna" && d.Candidate.Probability >= DueCaution.From);
        Assert.All(due, d => Assert.Equal(CandidateKind.LookAlike, d.Candidate.Kind));
        Assert.Equal(due.Count, due.Select(d => d.Caution.Id).Distinct().Count());
    }

    [Fact]
    public void A_plain_pepper_brings_none() => Assert.Empty(Of("fruit_shape=blocky; fruit_inside=hollow; fruit_position=pendant"));

    private static IReadOnlyList<DueCaution> Of(string answers)
    {
        var evidence = PepperGuide.Answers(answers);
        return DueCaution.Of(PepperGuide.Compiled.Guide, Ranker.Rank(PepperGuide.Compiled, evidence, Prior.OfGuide));
    }
}
