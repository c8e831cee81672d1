using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Editing;

namespace LibraryDesk.Web.Features.GuideEditor.Basics;

/// <summary>Changes of what a guide is built on, in words.</summary>
internal static class BasicsWords
{
    private static WordBook Say => BasicsText.Say;

    /// <summary>One change, as the draft's list tells it; null for changes of other things.</summary>
    public static string? Of(GuideEdit edit) => edit switch
    {
        PutWhole => Say["The guide as a whole: names, trust in answers or weights"],
        PutStage put => Say[$"Stage “{put.Stage.Name}”"],
        RemoveStage gone => Say[$"Stage “{gone.Id}” taken out"],
        PutPart put => Say[$"Plant part “{put.Part.Name}”"],
        RemovePart gone => Say[$"Plant part “{gone.Id}” taken out"],
        _ => null,
    };

    /// <summary>The heading over differences in stages or in plant parts.</summary>
    public static string Heading(GuidePart part) => part == GuidePart.Stage ? Say["Growth stages"] : Say["Plant parts"];
}
