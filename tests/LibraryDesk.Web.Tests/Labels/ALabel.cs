using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Web.Tests.Labels;

/// <summary>Labels for tests.</summary>
internal static class ALabel
{
    public static SeedLabel Of(
        string? variety = "Millrace Red", string? species = "capsicum-annuum", GerminationTest? tested = null, int number = 31, params HoldReason[] holds) => new(
        new PacketCode('Q', 2026, number).ToString(), false, "L26-031", new GoesBy(variety, species), false, Quantity.OfSeeds(25), new DateOnly(2026, 7, 1),
        new SeedGrown([2025], [Isolation.Bagged], 40), tested, holds);

    public static GerminationTest Tested(params (int Sown, int Up)[] replicates) =>
        new(new TestId(9), new LotId(3), new DateOnly(2026, 6, 4), [.. replicates.Select(each => new TestReplicate(each.Sown, each.Up))], 14);
}
