using System.Text;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Editing;

/// <summary>The kind of thing a fault stands in.</summary>
public enum GuidePart
{
    /// <summary>The guide as a whole.</summary>
    Whole,

    /// <summary>A source, by id.</summary>
    Source,

    /// <summary>A growth stage, by id.</summary>
    Stage,

    /// <summary>A plant part, by id.</summary>
    PlantPart,

    /// <summary>A trait, by id.</summary>
    Trait,

    /// <summary>A caution, by id.</summary>
    Caution,

    /// <summary>A candidate, its forms included, by id.</summary>
    Candidate,

    /// <summary>A cell, by its place in the guide's list, 0-based.</summary>
    Cell,
}

/// <summary>Something wrong in a guide, and where.</summary>
/// <param name="Id">Id of the thing, or the place of a cell; null for the whole guide.</param>
/// <param name="Words">What is wrong and what would be right.</param>
public sealed record PlacedFault(GuidePart Part, string? Id, string? Trait, FormattableString Words)
{
    /// <summary><see cref="Words"/> in English.</summary>
    public string Reason => FormattableString.Invariant(Words);
}

/// <summary>Runs a guide that was put together by editing through the same validator as a guide file.</summary>
public static class GuideCheck
{
    /// <summary>Every fault with the thing it stands in; empty when the guide is good.</summary>
    public static IReadOnlyList<PlacedFault> Of(CropGuide guide)
    {
        ArgumentNullException.ThrowIfNull(guide);
        var text = GuideText.Write(guide);
        var faults = GuideFile.Read(text).Faults;
        if (faults.Count == 0) return [];
        var places = Places(guide, text);
        return [.. faults.Select(f => places.TryGetValue(f.Line, out var place)
            ? new PlacedFault(place.Part, place.Id, f.Trait, f.Words)
            : new PlacedFault(GuidePart.Whole, null, f.Trait, f.Words))];
    }

    /// <summary>The guide's text has one thing a line, so a line is a place.</summary>
    private static Dictionary<int, (GuidePart Part, string Id)> Places(CropGuide guide, byte[] text)
    {
        var places = new Dictionary<int, (GuidePart, string)>();
        var list = "";
        var item = 0;
        var number = 0;
        foreach (var line in Encoding.UTF8.GetString(text).Split('\n'))
        {
            number++;
            if (line.StartsWith("    {", StringComparison.Ordinal))
            {
                if (PlaceOf(guide, list, item++) is { } place) places[number] = place;
            }
            else if (line.EndsWith('[') && line.Split('"') is [_, var name, ..])
            {
                (list, item) = (name, 0);
            }
        }

        return places;
    }

    private static (GuidePart, string)? PlaceOf(CropGuide guide, string list, int item) => list switch
    {
        "sources" => (GuidePart.Source, guide.Sources[item].Id),
        "stages" => (GuidePart.Stage, guide.Stages[item].Id),
        "parts" => (GuidePart.PlantPart, guide.Parts[item].Id),
        "traits" => (GuidePart.Trait, guide.Traits[item].Id),
        "cautions" => (GuidePart.Caution, guide.Cautions[item].Id),
        "candidates" => (GuidePart.Candidate, guide.Candidates[item].Id),
        "cells" => (GuidePart.Cell, item.ToString(System.Globalization.CultureInfo.InvariantCulture)),
        _ => null,
    };
}
