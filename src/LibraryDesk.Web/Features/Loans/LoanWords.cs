using System.Globalization;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Web.Features.SeedLineage;
using static LibraryDesk.Web.Features.Loans.LoansText;

namespace LibraryDesk.Web.Features.Loans;

/// <summary>Words and addresses for loans: one wording on every page.</summary>
internal static class LoanWords
{
    public static string Name(MemberLoan loan) => Name(loan.Variety);

    /// <summary>A variety's name in quotes, or that there is none.</summary>
    public static string Name(string? variety) => variety is null ? Say["No name yet"] : Quotes.Of(variety);

    public static string Due(MemberLoan loan) => loan is { IsOpen: true, DueOn: { } due } ? Say[$", seed hoped for by {SeedWords.Day(due)}"] : "";

    /// <summary>When it was lent, and when it ended or is due.</summary>
    public static string Course(MemberLoan loan) => loan.EndedOn is { } ended
        ? Say[$"lent on {SeedWords.Day(loan.LentOn)}, ended {SeedWords.Day(ended)}."]
        : Say[$"lent on {SeedWords.Day(loan.LentOn)}{Due(loan)}."];

    public static string ReturnPath(MemberLoan loan) => string.Create(CultureInfo.InvariantCulture, $"/returns/new?loan={loan.LoanId}");

    public static string EndPath(MemberLoan loan) => string.Create(CultureInfo.InvariantCulture, $"/loans/{loan.LoanId}/end");

    /// <summary>How a loan can end without seed, as the borrower or the librarian says it.</summary>
    public static string Ending(LoanEnding ending) => ending switch
    {
        LoanEnding.BroughtBack => Say["The packet came back unopened"],
        LoanEnding.Failed => Say["The sowing or the plants failed"],
        LoanEnding.Eaten => Say["It was eaten, no seed kept"],
        _ => Say["Nothing will come back"],
    };
}
