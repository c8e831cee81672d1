using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Returns;

/// <summary>The words of bringing seed back.</summary>
internal static class ReturnsText
{
    public static WordBook Say { get; } = new(typeof(ReturnsText));
}
