using System.Text.Json.Serialization;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Editing;

/// <summary>
/// One change to a guide. A draft is a published version and a list of these, so that a change can be undone, told in words, and carried over to another version.
/// </summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "do")]
[JsonDerivedType(typeof(PutSource), "source")]
[JsonDerivedType(typeof(RemoveSource), "remove-source")]
[JsonDerivedType(typeof(PutCaution), "caution")]
[JsonDerivedType(typeof(RemoveCaution), "remove-caution")]
[JsonDerivedType(typeof(PutWhole), "whole")]
[JsonDerivedType(typeof(PutStage), "stage")]
[JsonDerivedType(typeof(RemoveStage), "remove-stage")]
[JsonDerivedType(typeof(PutPart), "part")]
[JsonDerivedType(typeof(RemovePart), "remove-part")]
[JsonDerivedType(typeof(PutTrait), "trait")]
[JsonDerivedType(typeof(RemoveTrait), "remove-trait")]
[JsonDerivedType(typeof(PutCandidate), "candidate")]
[JsonDerivedType(typeof(RemoveCandidate), "remove-candidate")]
[JsonDerivedType(typeof(PutCell), "cell")]
[JsonDerivedType(typeof(RemoveCell), "remove-cell")]
public abstract record GuideEdit
{
    /// <summary>The guide with the change; null where what it changes is not in the guide, as after carrying a draft over to another version.</summary>
    public abstract CropGuide? Apply(CropGuide guide);

    /// <summary>The list with the item of the same id replaced, or with the item at its end.</summary>
    private protected static IReadOnlyList<T> With<T>(IReadOnlyList<T> items, T item, Func<T, string> id)
    {
        var at = items.ToList().FindIndex(i => id(i) == id(item));
        return at < 0 ? [.. items, item] : [.. items.Take(at), item, .. items.Skip(at + 1)];
    }

    /// <summary>The list without that id; null where it has none such.</summary>
    private protected static IReadOnlyList<T>? Without<T>(IReadOnlyList<T> items, string wanted, Func<T, string> id) =>
        items.Any(i => id(i) == wanted) ? [.. items.Where(i => id(i) != wanted)] : null;
}

/// <summary>Adds a source, or replaces the one of the same id.</summary>
public sealed record PutSource(Source Source) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => guide with { Sources = With(guide.Sources, Source, s => s.Id) };
}

/// <summary>Takes a source out. Where it is still named, the validator says so.</summary>
public sealed record RemoveSource(string Id) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => Without(guide.Sources, Id, s => s.Id) is { } left ? guide with { Sources = left } : null;
}

/// <summary>Adds a caution, or replaces the one of the same id.</summary>
public sealed record PutCaution(Caution Caution) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => guide with { Cautions = With(guide.Cautions, Caution, c => c.Id) };
}

/// <summary>Takes a caution out. Where it is still named, the validator says so.</summary>
public sealed record RemoveCaution(string Id) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => Without(guide.Cautions, Id, c => c.Id) is { } left ? guide with { Cautions = left } : null;
}

/// <summary>Adds a trait, or replaces the one of the same id.</summary>
public sealed record PutTrait(Trait Trait) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => guide with { Traits = With(guide.Traits, Trait, t => t.Id) };
}

/// <summary>Takes a trait out, with its cells and counts of plants and answers.</summary>
public sealed record RemoveTrait(string Id) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide) => Without(guide.Traits, Id, t => t.Id) is not { } left ? null : guide with
    {
        Traits = left,
        Cells = [.. guide.Cells.Where(c => c.Trait != Id)],
        Counts = [.. guide.Counts.Where(c => c.Trait != Id)],
        Answers = [.. guide.Answers.Where(c => c.Trait != Id)],
    };
}

/// <summary>Adds a candidate with its forms, or replaces the one of the same id.</summary>
/// <param name="Candidate">The candidate as it is to be.</param>
/// <param name="IsSharedOut">True scales the shares of all other candidates so that all sum to 1 again.</param>
public sealed record PutCandidate(Candidate Candidate, bool IsSharedOut) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide)
    {
        var all = With(guide.Candidates, Candidate, c => c.Id);
        var others = all.Where(c => c.Id != Candidate.Id).Sum(c => c.Prior);
        if (!IsSharedOut || Candidate.Prior is not (> 0 and < 1) || !(others > 0)) return guide with { Candidates = all };
        var scale = (1 - Candidate.Prior) / others;
        return guide with { Candidates = [.. all.Select(c => c.Id == Candidate.Id ? c : c with { Prior = c.Prior * scale })] };
    }
}

/// <summary>Takes a candidate out, with its forms, cells and counts; the shares of the rest are scaled so that they sum to 1.</summary>
public sealed record RemoveCandidate(string Id) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide)
    {
        if (Without(guide.Candidates, Id, c => c.Id) is not { } left) return null;
        var rest = left.Sum(c => c.Prior);
        return guide with
        {
            Candidates = rest > 0 ? [.. left.Select(c => c with { Prior = c.Prior / rest })] : left,
            Cells = [.. guide.Cells.Where(c => c.Of.Split('/')[0] != Id)],
            Counts = [.. guide.Counts.Where(c => c.Of.Split('/')[0] != Id)],
        };
    }
}

/// <summary>Adds a cell, or puts it in the place of another.</summary>
/// <param name="Old">The cell it replaces, as it stood; null for a new one. Its line does not count.</param>
public sealed record PutCell(Cell? Old, Cell New) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide)
    {
        if (Old is null) return guide with { Cells = [.. guide.Cells, New] };
        var at = GuideCells.IndexOf(guide, Old);
        return at < 0 ? null : guide with { Cells = [.. guide.Cells.Take(at), New, .. guide.Cells.Skip(at + 1)] };
    }
}

/// <summary>Takes a cell out.</summary>
/// <param name="Old">The cell as it stood; its line does not count.</param>
public sealed record RemoveCell(Cell Old) : GuideEdit
{
    /// <inheritdoc/>
    public override CropGuide? Apply(CropGuide guide)
    {
        var at = GuideCells.IndexOf(guide, Old);
        return at < 0 ? null : guide with { Cells = [.. guide.Cells.Take(at), .. guide.Cells.Skip(at + 1)] };
    }
}

internal static class GuideCells
{
    /// <summary>Place of a cell by its content, or -1.</summary>
    public static int IndexOf(CropGuide guide, Cell wanted)
    {
        var plain = wanted with { Line = 0 };
        for (var i = 0; i < guide.Cells.Count; i++)
        {
            if (guide.Cells[i] with { Line = 0 } == plain) return i;
        }

        return -1;
    }
}
