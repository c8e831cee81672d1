using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Lineage;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>What the validator of guides found, in the reader's language. Its English stands with the rules; names in quotes are those of the guide file.</summary>
public static class FaultWords
{
    public static string Of(PlacedFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return FaultText.Words[Sentence.From(fault.Words)];
    }
}

/// <summary>The validator's sentences in other languages.</summary>
internal static class FaultText
{
    public static WordBook Words { get; } = new(typeof(FaultText));
}
