using LibraryDesk.Desk.Seeds.Keeping;

namespace LibraryDesk.Web.Features.Home;

/// <summary>What a librarian finds beside the three things that would help most: counts that must not fall out of sight.</summary>
/// <param name="OverdueLoans">Running loans past their day.</param>
/// <param name="Due">What is due in keeping; null while it is reckoned for the first time.</param>
internal sealed record LibraryToday(int OverdueLoans, DueFigure? Due);
