using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Reading;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>The steps of filing, as the last part of their address.</summary>
internal static class FilingStep
{
    public const string Name = "name";
    public const string Parts = "parts";
    public const string Photos = "photos";
    public const string Ask = "ask";
    public const string Origin = "origin";

    /// <summary>Where filing begins: what seeds alone carry is not asked.</summary>
    public static string First(Specimen specimen) => specimen == Specimen.SeedsAlone ? Photos : Parts;

    /// <summary>Where a draft goes on: at the first step that has nothing yet.</summary>
    public static string GoOn(CaseView view) =>
        view.Latest.Parts.Count == 0 ? Parts
        : view.Latest.Photos.Count == 0 && view.Latest.Answers.Count == 0 ? Photos
        : Ask;
}
