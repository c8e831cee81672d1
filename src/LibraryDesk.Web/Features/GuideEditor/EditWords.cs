using System.Globalization;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Features.Guides;
using static LibraryDesk.Web.Features.GuideEditor.GuideEditorText;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>Changes, faults and differences of a guide in words, and where each can be put right.</summary>
internal static class EditWords
{
    /// <summary>One change of a draft, as its list tells it.</summary>
    public static string Of(GuideEdit edit, CropGuide guide) => edit switch
    {
        PutSource put => Say[$"Source “{put.Source.Citation}”"],
        RemoveSource gone => Say[$"Source “{gone.Id}” taken out"],
        PutCaution put => Say[$"Caution “{put.Caution.Title}”"],
        RemoveCaution gone => Say[$"Caution “{gone.Id}” taken out"],
        PutTrait put => Say[$"Question on “{put.Trait.Name}”"],
        RemoveTrait gone => Say[$"Trait “{gone.Id}” taken out, with all its figures"],
        PutCandidate put => Say[$"{put.Candidate.Name}: card, share or forms"],
        RemoveCandidate gone => Say[$"“{gone.Id}” taken out, with all its figures"],
        PutCell { Old: null } put => Say[$"New figure: {PlaceOf(put.New, guide)}, {Says(put.New)}"],
        PutCell put => Say[$"{PlaceOf(put.New, guide)}: {Says(put.Old)} becomes {Says(put.New)}"],
        RemoveCell gone => Say[$"{PlaceOf(gone.Old, guide)}: {Says(gone.Old)} taken out"],
        _ => Basics.BasicsWords.Of(edit) ?? Say["A change"],
    };

    /// <summary>"Capsicum annuum, cayenne: Corolla spots, absent".</summary>
    public static string PlaceOf(Cell cell, CropGuide guide) => $"{OwnerOf(cell.Of, guide)}: {WhatOf(cell, guide)}";

    /// <summary>Trait and state of a cell.</summary>
    public static string WhatOf(Cell cell, CropGuide guide) =>
        guide.FindTrait(cell.Trait) is { } trait ? $"{trait.Name}, {GuideWords.What(cell, trait)}" : cell.Trait;

    /// <summary>The candidate of a cell, with its form or profile.</summary>
    public static string OwnerOf(string of, CropGuide guide)
    {
        var parts = of.Split('/', 2);
        var candidate = guide.FindCandidate(parts[0]);
        if (parts.Length == 1) return candidate?.Name ?? of;
        return $"{candidate?.Name ?? parts[0]}, {candidate?.Forms.FirstOrDefault(f => f.Id == parts[1])?.Name ?? parts[1].Replace('-', ' ')}";
    }

    public static string Says(Cell cell) => $"{GuideWords.Says(cell)} [{cell.Source}]";

    /// <summary>Where a fault can be put right.</summary>
    public static string PathOf(PlacedFault fault, string guideId) => fault.Part switch
    {
        GuidePart.Source => $"/guides/{guideId}/edit/source?id={Uri.EscapeDataString(fault.Id!)}",
        GuidePart.Stage => $"/guides/{guideId}/edit/stage?id={Uri.EscapeDataString(fault.Id!)}",
        GuidePart.PlantPart => $"/guides/{guideId}/edit/part?id={Uri.EscapeDataString(fault.Id!)}",
        GuidePart.Caution => $"/guides/{guideId}/edit/caution?id={Uri.EscapeDataString(fault.Id!)}",
        GuidePart.Trait => $"/guides/{guideId}/edit/trait?id={Uri.EscapeDataString(fault.Id!)}",
        GuidePart.Candidate => $"/guides/{guideId}/edit/kind?id={Uri.EscapeDataString(fault.Id!)}",
        GuidePart.Cell => $"/guides/{guideId}/edit/cell?at={fault.Id}",
        _ => $"/guides/{guideId}/edit/whole",
    };

    /// <summary>What a fault stands in.</summary>
    public static string PlaceOf(PlacedFault fault, CropGuide guide) => fault.Part switch
    {
        GuidePart.Source => Say[$"Source {fault.Id}"],
        GuidePart.Stage => guide.Stages.FirstOrDefault(s => s.Id == fault.Id)?.Name ?? fault.Id!,
        GuidePart.PlantPart => guide.Parts.FirstOrDefault(p => p.Id == fault.Id)?.Name ?? fault.Id!,
        GuidePart.Caution => Say[$"Caution {fault.Id}"],
        GuidePart.Trait => Say[$"Trait {guide.FindTrait(fault.Id!)?.Name ?? fault.Id}"],
        GuidePart.Candidate => guide.FindCandidate(fault.Id!)?.Name ?? fault.Id!,
        GuidePart.Cell => PlaceOf(guide.Cells[int.Parse(fault.Id!, CultureInfo.InvariantCulture)], guide),
        _ => Say["The guide as a whole"],
    };

    /// <summary>The thing that a difference is about.</summary>
    public static string PlaceOf(GuideChange change, CropGuide was, CropGuide becomes) => change.Part switch
    {
        GuidePart.Cell => $"{OwnerOf(change.Of, becomes.FindCandidate(change.Of.Split('/')[0]) is null ? was : becomes)}: {becomes.FindTrait(change.Trait!)?.Name ?? was.FindTrait(change.Trait!)?.Name ?? change.Trait}, {StateOf(change, becomes) ?? StateOf(change, was) ?? change.What}",
        GuidePart.Trait => becomes.FindTrait(change.Of)?.Name ?? was.FindTrait(change.Of)?.Name ?? change.Of,
        GuidePart.Candidate => OwnerOf(change.Of, becomes.FindCandidate(change.Of) is null ? was : becomes),
        GuidePart.Stage => (becomes.Stages.FirstOrDefault(s => s.Id == change.Of) ?? was.Stages.FirstOrDefault(s => s.Id == change.Of))?.Name ?? change.Of,
        GuidePart.PlantPart => (becomes.Parts.FirstOrDefault(p => p.Id == change.Of) ?? was.Parts.FirstOrDefault(p => p.Id == change.Of))?.Name ?? change.Of,
        GuidePart.Caution => becomes.Cautions.FirstOrDefault(c => c.Id == change.Of)?.Title ?? change.Of,
        GuidePart.Whole => becomes.Crop,
        _ => change.Of,
    };

    /// <summary>The heading over the differences of one kind.</summary>
    public static string Heading(GuidePart part) => part switch
    {
        GuidePart.Whole => Say["The guide as a whole"],
        GuidePart.Source => Say["Sources"],
        GuidePart.Stage or GuidePart.PlantPart => Basics.BasicsWords.Heading(part),
        GuidePart.Caution => Say["Cautions"],
        GuidePart.Trait => Say["Questions"],
        GuidePart.Candidate => Say["Kinds and forms"],
        _ => Say["Figures"],
    };

    /// <summary>Which entry of a thing differs, such as its question; null where it is the thing as a whole.</summary>
    public static string? EntryOf(GuideChange change) => change.What?.Split(' ', 2) is not { } words || change.Part == GuidePart.Cell ? null : (words[0], change.What) switch
    {
        ("state", _) when words.Length > 1 => Say[$"state {words[1]}"],
        ("form", not "form sharing") when words.Length > 1 => Say[$"form {words[1]}"],
        (_, "crop") => Say["crop"],
        (_, "genus") => Say["genus"],
        (_, "smoothing") => Say["smoothing"],
        (_, "temper") => Say["temper"],
        (_, "form sharing") => Say["form sharing"],
        (_, "reliability of answers") => Say["reliability of answers"],
        (_, "order of stages") => Say["order of stages"],
        (_, "order of parts") => Say["order of parts"],
        (_, "citation") => Lower(Say["Citation"]),
        (_, "licence") => Say["licence"],
        (_, "title") => Say["title"],
        (_, "text") => Say["text"],
        (_, "sources") => Lower(Say["Sources"]),
        (_, "name") => Lower(Say["Name"]),
        (_, "question") => Lower(Say["Question"]),
        (_, "hint") => Say["hint"],
        (_, "why") => Say["why"],
        (_, "part") => Say["part"],
        (_, "stage") => Say["stage"],
        (_, "effort") => Say["effort"],
        (_, "minutes") => Say["minutes"],
        (_, "kind") => Say["kind"],
        (_, "unit") => Lower(Say["Unit"]),
        (_, "varies within a plant") => Say["varies within a plant"],
        (_, "asked") => Say["asked"],
        (_, "caution") => Say["caution"],
        (_, "descriptor") => Say["descriptor"],
        (_, "source") => Lower(Say["Source"]),
        (_, "easily confused") => Say["easily confused"],
        (_, "common name") => Say["common name"],
        (_, "grown") => Say["grown"],
        (_, "share") => Say["share"],
        (_, "share rests on") => Say["share rests on"],
        (_, "cautions") => Lower(Say["Cautions"]),
        (_, "card") => Lower(Say["Card"]),
        (_, "profiles") => Say["profiles"],
        (_, var other) => other,
    };

    /// <summary>What stood or stands in the place of a difference; what the guide itself says stays as it is written.</summary>
    public static string ValueOf(GuideChange change, string? value) => (change.Part, change.What, value) switch
    {
        (_, _, null) => Say["nothing"],
        (GuidePart.Cell, _, _) => value.Split(' ', 2) is [var word, var rest] && Enum.TryParse<Word>(word, ignoreCase: true, out var often) ? $"{GuideWords.HowOften(often)} {rest}" : value,
        (_, "varies within a plant" or "asked" or "grown", "yes") => Lower(Say["Yes"]),
        (_, "varies within a plant" or "asked" or "grown", "no") => Say["no"],
        (_, "effort", "look") => Lower(Say["Look only"]),
        (_, "effort", "touch") => Lower(Say["Touch"]),
        (_, "effort", "cut") => Lower(Say["Cut open"]),
        (GuidePart.Trait, "kind", "unordered") => Say["states without an order"],
        (GuidePart.Trait, "kind", "ordered") => Say["states in order"],
        (GuidePart.Trait, "kind", "measured") => Say["measured"],
        _ => value,
    };

    private static string Lower(string words) => words.ToLower(CultureInfo.CurrentCulture);

    private static string? StateOf(GuideChange change, CropGuide guide) => guide.FindTrait(change.Trait!)?.FindState(change.What!)?.Name;
}
