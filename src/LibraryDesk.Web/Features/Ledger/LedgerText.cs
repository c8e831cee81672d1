using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Ledger;

/// <summary>The words of the page about the ledger.</summary>
internal static class LedgerText
{
    public static WordBook Say { get; } = new(typeof(LedgerText));
}
