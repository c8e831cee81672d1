using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>The words of working on a guide’s next version.</summary>
internal static class GuideEditorText
{
    public static WordBook Say { get; } = new(typeof(GuideEditorText));
}
