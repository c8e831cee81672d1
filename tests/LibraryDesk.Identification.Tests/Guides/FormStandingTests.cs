using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>A form stands with four sourced traits that differ from its siblings, and only if descriptions held out are not named worse by it.</summary>
public sealed class FormStandingTests
{
    public static TheoryData<string> Ids => [.. BuiltInGuides.Ids];

    private static readonly Lazy<HeldOutForms> Peppers = new(() => HeldOutForms.Of(Open("capsicum"), PepperGuide.Domesticated)!);

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_form_is_set_apart_by_four_sourced_traits(string id) =>
        Assert.All(FormStanding.Of(Open(id)), f => Assert.True(f.Stands, $"{f.Candidate}/{f.Form}: {string.Join(", ", f.Traits)}"));

    [Fact]
    public void A_form_that_only_copies_its_siblings_does_not_stand()
    {
        var guide = Open("capsicum");
        var annuum = guide.FindCandidate(PepperGuide.Annuum)!;
        var copy = new Form("copy", "copy", 0.1, null, ["capsicum-annuum/bell", "capsicum-annuum/var-annuum"]);
        var forms = annuum.Forms.Select(f => f with { Weight = f.Weight * 0.9 }).Append(copy);
        var changed = guide with { Candidates = [.. guide.Candidates.Select(c => c == annuum ? c with { Forms = [.. forms] } : c)] };

        Assert.False(FormStanding.Of(changed).Single(f => f.Form == "copy").Stands);
    }

    /// <summary>What words leave open is spelled out in the guides under a name of its own; no source says it, so it neither describes a form nor sets it apart.</summary>
    [Fact]
    public void What_words_leave_open_is_no_source()
    {
        var guide = SmallGuide.Compiled.Guide;
        string[] two = ["parva-alba", "parva-nigra"];
        var spelled = guide with { Cells = [.. guide.Cells, Dwarf("hairs", "many", 0.2, "remainder"), Dwarf("scent", "plain", 0.2, "remainder")] };

        Assert.Equal(1, HeldOutForms.Of(guide, two)!.Descriptions);
        Assert.Equal(1, HeldOutForms.Of(spelled, two)!.Descriptions);
        Assert.DoesNotContain("scent", FormStanding.Of(spelled).Single(f => f.Form == "dwarf").Traits);
    }

    /// <summary>Drawn from the source's own row alone, every plant would show the one state in a million that it names, and be taken for Parva nigra.</summary>
    [Fact]
    public void What_a_source_hardly_ever_sees_is_hardly_ever_drawn()
    {
        var guide = SmallGuide.Compiled.Guide;
        string[] two = ["parva-alba", "parva-nigra"];
        var plain = guide with { Cells = [.. guide.Cells.Where(c => c is not { Of: "parva-alba/dwarf", Trait: "spots" }), Dwarf("scent", "sweet", 1, "book")] };
        var once = plain with { Cells = [.. plain.Cells, Dwarf("spots", "present", 1e-6, "book")] };

        Assert.InRange(HeldOutForms.Of(once, two)!.LogLoss, 0, HeldOutForms.Of(plain, two)!.LogLoss + 0.1);
    }

    [Fact]
    public void No_pepper_form_is_shown_to_cost_log_loss_on_descriptions_held_out() =>
        Assert.All(Peppers.Value.Forms, f => Assert.False(f.Costs, $"{f.Candidate}/{f.Form}: {f.Gain:F4} +- {f.GainError:F4} nats"));

    [Fact]
    public void A_little_of_the_whole_species_in_every_form_serves_descriptions_held_out() =>
        Assert.True(Peppers.Value.LogLoss < HeldOutForms.Of(Open("capsicum") with { FormSharing = 0 }, PepperGuide.Domesticated)!.LogLoss);

    private static Cell Dwarf(string trait, string state, double share, string source) => new("parva-alba/dwarf", trait, state, null, null, null, share, null, null, source, 0);

    private static CropGuide Open(string id) => BuiltInGuides.Open(id)!.Guide!;
}
