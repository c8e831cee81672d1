using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Account;

/// <summary>The words of the pages about an account.</summary>
internal static class AccountText
{
    public static WordBook Say { get; } = new(typeof(AccountText));
}
