using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Editing;

/// <summary>Adds a growth stage, or replaces the one of the same id, and says where in the season it stands. Parts follow the order of their stages.</summary>
/// <param name="After">Id of the stage it comes after; null for the first of the season.</param>
public sealed record PutStage(Stage Stage, string? After) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide)
    {
        var others = guide.Stages.Where(s => s.Id != Stage.Id).ToList();
        var at = After is null ? 0 : others.FindIndex(s => s.Id == After) + 1;
        if (After is not null && at == 0) return null;
        others.Insert(at, Stage);
        return guide with { Stages = others, Parts = InSeason(guide.Parts, others) };
    }

    /// <summary>Parts in the order of the season; those of one stage keep their order, and those of no stage stand last.</summary>
    internal static IReadOnlyList<Part> InSeason(IReadOnlyList<Part> parts, IReadOnlyList<Stage> stages)
    {
        var places = stages.Select((stage, at) => (stage.Id, at)).ToLookup(s => s.Id, s => s.at);
        return [.. parts.OrderBy(p => places[p.Stage].FirstOrDefault(int.MaxValue))];
    }
}

/// <summary>Takes a growth stage out. Where a part still comes at it, the validator says so.</summary>
public sealed record RemoveStage(string Id) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => Without(guide.Stages, Id, s => s.Id) is { } left ? guide with { Stages = left } : null;
}

/// <summary>Adds a plant part, or replaces the one of the same id. It stands among the parts of its stage.</summary>
public sealed record PutPart(Part Part) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => guide with { Parts = PutStage.InSeason(With(guide.Parts, Part, p => p.Id), guide.Stages) };
}

/// <summary>Takes a plant part out. Where a trait still needs it, the validator says so.</summary>
public sealed record RemovePart(string Id) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => Without(guide.Parts, Id, p => p.Id) is { } left ? guide with { Parts = left } : null;
}

/// <summary>Changes what belongs to the guide as a whole.</summary>
/// <param name="Observer">How reliable answers are where a trait says nothing else; null for <see cref="ObserverReliability.Usual"/>.</param>
/// <param name="Temper">See <see cref="CropGuide.Temper"/>.</param>
/// <param name="FormSharing">See <see cref="CropGuide.FormSharing"/>.</param>
public sealed record PutWhole(string Crop, string Genus, ObserverReliability? Observer, double Temper, double FormSharing) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => guide with { Crop = Crop, Genus = Genus, Observer = Observer, Temper = Temper, FormSharing = FormSharing };
}
