using System.Globalization;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Features.GuideEditor.Basics;
using LibraryDesk.Web.Shared.Forms;
using static LibraryDesk.Web.Features.GuideEditor.GuideEditorText;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>A trait as its form posts it.</summary>
public sealed class TraitFields
{
    /// <summary>Rows for states that are not there yet.</summary>
    private const int Spare = 3;

    /// <summary>The draft's revision as the form showed it.</summary>
    public long Revision { get; set; }
    /// <summary>Short name.</summary>
    public string? Id { get; set; }
    /// <summary>Its name.</summary>
    public string? Name { get; set; }
    /// <summary>The plain question.</summary>
    public string? Question { get; set; }
    /// <summary>How to look.</summary>
    public string? Hint { get; set; }
    /// <summary>What it tells.</summary>
    public string? Why { get; set; }
    /// <summary>Id of the plant part it needs.</summary>
    public string? Part { get; set; }
    /// <summary>What must be done.</summary>
    public Effort Effort { get; set; }
    /// <summary>How long it takes, in minutes.</summary>
    public string? Minutes { get; set; } = "1";
    /// <summary>What kind it is; only asked for a new one.</summary>
    public TraitKind Kind { get; set; }
    /// <summary>Unit of a measured trait.</summary>
    public string? Unit { get; set; }
    /// <summary>True where two flowers or fruits of one plant can differ.</summary>
    public bool Varies { get; set; }
    /// <summary>False for what is only taken as known already.</summary>
    public bool Asked { get; set; } = true;
    /// <summary>Id of the caution before the question.</summary>
    public string? Caution { get; set; }
    /// <summary>Published descriptor.</summary>
    public string? Descriptor { get; set; }
    /// <summary>Source id.</summary>
    public string? Source { get; set; }
    /// <summary>How reliable answers to it are; all empty for the guide's own.</summary>
    public ReliabilityFields Observer { get; set; } = new();
    /// <summary>Its states, with empty rows for more.</summary>
    public List<StateFields>? States { get; set; }

    /// <summary>The form of what stands in the draft.</summary>
    public static TraitFields From(Trait? trait, long revision)
    {
        var fields = new TraitFields { Revision = revision, States = [.. Enumerable.Range(0, Spare).Select(_ => new StateFields())] };
        if (trait is null) return fields;
        (fields.Id, fields.Name, fields.Question, fields.Hint, fields.Why) = (trait.Id, trait.Name, trait.Question, trait.Hint, trait.Why);
        (fields.Part, fields.Effort, fields.Minutes, fields.Kind, fields.Unit) = (trait.Part, trait.Effort, trait.Minutes.ToString(CultureInfo.InvariantCulture), trait.Kind, trait.Unit);
        (fields.Varies, fields.Asked, fields.Caution, fields.Descriptor, fields.Source) = (trait.VariesWithinPlant, trait.Asked, trait.Caution, trait.Descriptor, trait.Source);
        fields.Observer = ReliabilityFields.From(trait.Observer);
        fields.States = [.. trait.States.Select(s => new StateFields { Id = s.Id, Name = s.Name, Hint = s.Hint, Drawing = s.Drawing }), .. fields.States];
        return fields;
    }

    /// <summary>The trait, or what must be put right first.</summary>
    /// <param name="was">As it stands; null for a new one.</param>
    public (Trait? Trait, IReadOnlyList<FormFault> Faults) Read(Trait? was, CropGuide guide)
    {
        var faults = new List<FormFault>();
        var id = was?.Id ?? Blank(Id);
        if (id is null) faults.Add(new FormFault("id", Say["Give the trait a short name, such as leaf_margin. Figures name it."]));
        else if (was is null && guide.FindTrait(id) is not null) faults.Add(new FormFault("id", Say["There is a trait of that short name already. Choose another."]));
        if (Blank(Name) is null) faults.Add(new FormFault("name", Say["Give the trait its name."]));
        if (Asked && Blank(Question) is null) faults.Add(new FormFault("question", Say["Put the question in plain words."]));
        if (guide.Parts.All(p => p.Id != Part)) faults.Add(new FormFault("part", Say["Choose the part of the plant that it needs."]));
        if (!double.TryParse(Minutes?.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var minutes) || minutes is not (> 0 and <= 600))
            faults.Add(new FormFault("minutes", Say["Say how many minutes the look takes, more than 0."]));
        var kind = was?.Kind ?? Kind;
        var states = (States ?? []).Where(s => !s.Gone && (Blank(s.Id) ?? Blank(s.Name)) is not null)
            .Select(s => new State(Blank(s.Id) ?? Blank(s.Name)!.ToLowerInvariant(), Blank(s.Name) ?? s.Id!.Trim(), Blank(s.Hint), Blank(s.Drawing))).ToList();
        if (kind != TraitKind.Measured && states.Count < 2) faults.Add(new FormFault("states", Say["A trait needs two states at least; with one it could tell nothing."]));
        if (kind == TraitKind.Measured && Blank(Unit) is null) faults.Add(new FormFault("unit", Say["Give the unit it is measured in, such as mm."]));
        var observer = Observer.Read(was?.Observer, faults);
        if (faults.Count > 0) return (null, faults);
        var kept = states.Select(s => s.Id).ToHashSet();
        return (new Trait(
            id!, Name!.Trim(), Blank(Question) ?? "", Blank(Hint), Blank(Why), Part!, Effort, minutes, kind, kind == TraitKind.Measured ? Unit!.Trim() : null,
            Varies, Asked, Blank(Caution), Blank(Descriptor), kind == TraitKind.Measured ? [] : states,
            [.. (was?.Confused ?? []).Select(group => (IReadOnlyList<string>)[.. group.Where(kept.Contains)]).Where(group => group.Count > 1)], Blank(Source),
            observer), []);
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
