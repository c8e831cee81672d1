using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;

namespace LibraryDesk.Web.Shared.Forms;

/// <summary>One thing to change before a form can be taken.</summary>
/// <param name="FieldId">The id of the input it is about; null when it is about the whole form.</param>
/// <param name="Message">The rule and the way on.</param>
public sealed record FormFault(string? FieldId, string Message)
{
    /// <summary>What an act of the desk refused, in the reader's language.</summary>
    public FormFault(string? fieldId, Refusal no)
        : this(fieldId, RefusalText.Say[no])
    {
        ArgumentNullException.ThrowIfNull(no);
        MayInsist = no.MayInsist;
    }

    /// <summary>True when it is a question: with the word that it is meant, the form is taken as it is.</summary>
    public bool MayInsist { get; }
}
