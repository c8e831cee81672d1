using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Loans;

/// <summary>The words of lending and taking back.</summary>
internal static class LoansText
{
    public static WordBook Say { get; } = new(typeof(LoansText));
}
