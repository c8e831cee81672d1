using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>The words of lineage, and of what the ledger holds as codes.</summary>
internal static class SeedLineageText
{
    public static WordBook Say { get; } = new(typeof(SeedLineageText));
}
