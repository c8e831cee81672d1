using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Words;
using LibraryDesk.Desk.Words.Guides;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Desk.Tests.Review;

public sealed class TellApartTests
{
    private const string Annuum = "capsicum-annuum";
    private const string Baccatum = "capsicum-baccatum";
    private static readonly CompiledGuide Guide = CompiledGuide.Compile(BuiltInGuides.Open("capsicum")!.Guide!);
    private static readonly string Spots = Guide.Guide.FindTrait("corolla_spots")!.Name;

    // Common practice, no source: spots in the corolla point to baccatum and part it from annuum.
    [Fact]
    public void Corolla_spots_are_among_what_parts_baccatum_from_annuum()
    {
        var rows = TellApart.Rows(Guide, Baccatum, Annuum, []);
        Assert.Contains(rows, row => row.Trait == Spots && row.Word is ReasonWord.Strong or ReasonWord.Decides);
    }

    [Fact]
    public void The_heaviest_stand_first()
    {
        var words = TellApart.Rows(Guide, Baccatum, Annuum, []).Select(row => row.Word).ToList();
        Assert.Equal(words.OrderDescending(), words);
    }

    [Fact]
    public void What_this_plant_shows_ticks_a_side_and_changes_nothing_else()
    {
        var answer = new AnswerRow { TraitId = "corolla_spots", Kind = AnswerKind.States, States = "absent" };
        var (without, with) = (TellApart.Rows(Guide, Baccatum, Annuum, []), TellApart.Rows(Guide, Baccatum, Annuum, [answer]));
        var row = with.Single(r => r.Trait == Spots);
        Assert.Equal((false, true), (row.FallsOnA, row.FallsOnB));
        Assert.Equal(without, with.Select(r => r with { Plant = null, FallsOnA = false, FallsOnB = false }));
    }

    [Fact]
    public void The_same_or_an_unknown_candidate_gives_no_rows()
    {
        Assert.Empty(TellApart.Rows(Guide, Annuum, Annuum, []));
        Assert.Empty(TellApart.Rows(Guide, Annuum, "capsicum-inventum", []));
    }

    [Fact]
    public void Rows_are_told_in_the_readers_language()
    {
        using var _ = Languages.Speak("es");
        var spanish = GuideBooks.Translate(Guide);
        var rows = TellApart.Rows(spanish, Baccatum, Annuum, []);
        Assert.DoesNotContain(rows, row => row.A.Contains(" or ", StringComparison.Ordinal) || row.B.Contains(" to ", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.A.StartsWith("de ", StringComparison.Ordinal) && row.A.EndsWith(" mm", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_row_has_a_source_behind_it()
    {
        Assert.NotEmpty(TellApart.Sources(Guide.Guide, Baccatum, Annuum, TellApart.Rows(Guide, Baccatum, Annuum, [])));
    }
}
