using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>What is asked before a case can begin.</summary>
/// <param name="GuideId">Crop guide, e.g. <c>capsicum</c>.</param>
/// <param name="Title">What its owner calls it.</param>
/// <param name="Plants">1, or the number of seedlings of a tray.</param>
/// <param name="GuestEmail">Where a guest is written to; null for the signed in. May be null for a walk-in, who then gets the link on paper.</param>
/// <param name="ForWalkIn">True when a volunteer files it for somebody at the counter.</param>
/// <param name="SiteAddress">Address of this desk as the asker sees it, for the link in the letter; used where the library set none.</param>
public sealed record NewCase(
    string GuideId, string Title, Specimen Specimen, int Plants, string? GuestEmail, bool ForWalkIn, string SiteAddress);

/// <summary>The cases begun, one for each plant.</summary>
/// <param name="GuestKey">The secret of the guest's link, known only now; null for account holders.</param>
public sealed record StartedCase(IReadOnlyList<long> CaseIds, string? GuestKey);
