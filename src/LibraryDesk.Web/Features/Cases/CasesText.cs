using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Cases;

/// <summary>The words of cases: their odds, reasons, looks and origin.</summary>
internal static class CasesText
{
    public static WordBook Say { get; } = new(typeof(CasesText));
}
