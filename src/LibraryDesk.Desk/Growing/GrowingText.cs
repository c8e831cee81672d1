using LibraryDesk.Desk.Words;

namespace LibraryDesk.Desk.Growing;

/// <summary>The words around growing figures: units, terms, kinds, how a source was had.</summary>
internal static class GrowingText
{
    public static WordBook Say { get; } = new(typeof(GrowingText));
}

/// <summary>Names and statements of <c>growing.json</c> in other languages, the English of the file being the key.</summary>
internal static class GrowingFileText
{
    public static WordBook Words { get; } = new(typeof(GrowingFileText));
}
