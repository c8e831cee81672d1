using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>The words of choosing and printing labels.</summary>
internal static class LabelsText
{
    public static WordBook Say { get; } = new(typeof(LabelsText));
}
