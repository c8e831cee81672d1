using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Help;

/// <summary>The words of the page that explains the desk.</summary>
internal static class HelpText
{
    public static WordBook Say { get; } = new(typeof(HelpText));
}
