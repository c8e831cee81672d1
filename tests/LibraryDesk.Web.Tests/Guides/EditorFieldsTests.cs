using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Features.GuideEditor;
using LibraryDesk.Web.Features.GuideEditor.Basics;

namespace LibraryDesk.Web.Tests.Guides;

public sealed class EditorFieldsTests
{
    private static readonly CropGuide Peppers = BuiltInGuides.Open("capsicum")!.Guide!;

    [Fact]
    public void A_figure_goes_through_its_form_unchanged()
    {
        foreach (var cell in Peppers.Cells.Where((_, i) => i % 37 == 0))
        {
            var (read, faults) = CellFields.From(cell, 1).Read(cell.Of, Peppers.FindTrait(cell.Trait)!);
            Assert.Empty(faults);
            Assert.Equal(cell with { Line = 0, P = null }, read! with { P = null });
            if (cell.P is { } share) Assert.Equal(share, read!.P!.Value, 8);
        }
    }

    [Fact]
    public void A_question_goes_through_its_form_unchanged()
    {
        foreach (var trait in Peppers.Traits)
        {
            var (read, faults) = TraitFields.From(trait, 1).Read(trait, Peppers);
            Assert.Empty(faults);
            Assert.True(GuideDifference.Between(Peppers, new PutTrait(read!).Apply(Peppers)!).IsNone, trait.Id);
        }
    }

    [Fact]
    public void A_kind_goes_through_its_form_unchanged()
    {
        foreach (var candidate in Peppers.Candidates)
        {
            var (read, faults) = KindFields.From(candidate, 1).Read(candidate, Peppers);
            Assert.Empty(faults);
            Assert.True(GuideDifference.Between(Peppers, new PutCandidate(read!, false).Apply(Peppers)!).IsNone, candidate.Id);
        }
    }

    [Fact]
    public void The_guide_as_a_whole_goes_through_its_form_unchanged()
    {
        var guide = Peppers with { Observer = new ObserverReliability(0.987654, 0.9, 2.0 / 3) };
        var (change, faults) = WholeFields.From(guide, 1).Read(guide);
        Assert.Empty(faults);
        Assert.True(GuideDifference.Between(guide, change!.Apply(guide)!).IsNone);
    }

    [Fact]
    public void Trust_in_answers_is_given_whole_or_not_at_all()
    {
        var trait = Peppers.Traits[0] with { Observer = new ObserverReliability(0.9, 0.8, 0.7) };
        var form = TraitFields.From(trait, 1);
        form.Observer = new ReliabilityFields();
        Assert.Null(form.Read(trait, Peppers).Trait!.Observer);
        form.Observer = new ReliabilityFields { Sure = "95", Fairly = "80" };
        Assert.Contains(form.Read(trait, Peppers).Faults, f => f.FieldId == "faint");
        form.Observer.Faint = "60";
        Assert.Equal(new ObserverReliability(0.95, 0.8, 0.6), form.Read(trait, Peppers).Trait!.Observer);
    }

    [Theory]
    [InlineData("twelve", "share")]
    [InlineData("130", "share")]
    [InlineData("NaN", "share")]
    [InlineData("-3", "share")]
    public void A_share_that_is_none_is_said_at_its_field(string share, string field)
    {
        var cell = Peppers.Cells.First(c => c.State is not null);
        var form = CellFields.From(cell, 1);
        (form.Word, form.Share) = (CellFields.Counted, share);
        var (read, faults) = form.Read(cell.Of, Peppers.FindTrait(cell.Trait)!);
        Assert.Null(read);
        Assert.Contains(faults, f => f.FieldId == field);
    }

    [Fact]
    public void A_band_upside_down_is_said()
    {
        var cell = Peppers.Cells.First(c => c.Low is not null && c.High is not null);
        var form = CellFields.From(cell, 1);
        (form.Low, form.High) = (form.High, form.Low);
        Assert.Contains(form.Read(cell.Of, Peppers.FindTrait(cell.Trait)!).Faults, f => f.FieldId == "high");
    }

    [Fact]
    public void A_look_alike_needs_its_caution()
    {
        var form = KindFields.From(Peppers.Candidates.First(c => c.Kind == CandidateKind.LookAlike), 1);
        form.Cautions = [];
        Assert.Contains(form.Read(Peppers.Candidates.First(c => c.Kind == CandidateKind.LookAlike), Peppers).Faults, f => f.FieldId == "cautions");
    }
}
