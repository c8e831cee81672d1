using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.GuideEditor.Basics;

/// <summary>The words about what a guide is built on: the guide as a whole, its season, its plant parts, and how far answers are trusted.</summary>
internal static class BasicsText
{
    public static WordBook Say { get; } = new(typeof(BasicsText));
}
