using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Record;

/// <summary>The words of the desk’s record.</summary>
internal static class RecordText
{
    public static WordBook Say { get; } = new(typeof(RecordText));
}
