using System.Globalization;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Web.Features.SeedLineage;

namespace LibraryDesk.Web.Features.Loans;

/// <summary>Words and addresses for loans: one wording on every page.</summary>
internal static class LoanWords
{
    public static string Name(MemberLoan loan) => loan.Variety is { } variety ? $"‘{variety}’" : "No name yet";

    public static string Due(MemberLoan loan) => loan is { IsOpen: true, DueOn: { } due } ? $", seed hoped for by {SeedWords.Day(due)}" : "";

    public static string ReturnPath(MemberLoan loan) => string.Create(CultureInfo.InvariantCulture, $"/returns/new?loan={loan.LoanId}");

    public static string EndPath(MemberLoan loan) => string.Create(CultureInfo.InvariantCulture, $"/loans/{loan.LoanId}/end");

    /// <summary>How a loan can end without seed, as the borrower or the librarian says it.</summary>
    public static string Ending(LoanEnding ending) => ending switch
    {
        LoanEnding.BroughtBack => "The packet came back unopened",
        LoanEnding.Failed => "The sowing or the plants failed",
        LoanEnding.Eaten => "It was eaten, no seed kept",
        _ => "Nothing will come back",
    };
}
