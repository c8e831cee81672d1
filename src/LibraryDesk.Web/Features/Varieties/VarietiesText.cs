using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Varieties;

/// <summary>The words of variety records.</summary>
internal static class VarietiesText
{
    public static WordBook Say { get; } = new(typeof(VarietiesText));
}
