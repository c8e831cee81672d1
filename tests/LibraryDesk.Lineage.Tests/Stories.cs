using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests;

/// <summary>A blend of a donor's line and swap-table seed, its packets, and a grow-out of one of them: the demo library's story in small.</summary>
internal sealed class BlendStory
{
    public BlendStory()
    {
        Donated = Library.Receive(Quantity.OfSeeds(100), 2019);
        Intake = Library.LotOf(Donated);
        FirstYear = Up(Intake, 2020, 24);
        SecondYear = Up(FirstYear, 2022, 14);
        Swapped = Library.Receive(Quantity.OfSeeds(250), 2021, source: SeedSource.SwapTable);
        SwapLot = Library.LotOf(Swapped);
        Blend = Library.Blend(Day(2023, 2, 12), (SecondYear, Quantity.OfSeeds(750)), (SwapLot, null));
        Early = Library.PutUp(Blend, 6, 20, Day(2024, 3));
        var loan = Library.Lend(Early[0], Person(10), Day(2024, 4));
        Crop = Library.Grow(Early[0], loan, Day(2025, 3), new(12, 12, null, null, Isolation.Open, 40, true, HarvestManner.Bulked));
        Harvested = Library.Harvest(Crop, 1000, Day(2025, 10), loan);
        Late = Library.PutUp(Harvested, 14, 25, Day(2026, 3, 11));
        foreach (var packet in Late.Take(9)) Library.Lend(packet, Person((int)packet.Id.Value), Day(2026, 3, 20));
    }

    public TestLibrary Library { get; } = new();

    public Accession Donated { get; }

    public Lot Intake { get; }

    public Lot FirstYear { get; }

    public Lot SecondYear { get; }

    public Accession Swapped { get; }

    public Lot SwapLot { get; }

    public Lot Blend { get; }

    public IReadOnlyList<Packet> Early { get; }

    public GrowOut Crop { get; }

    public Lot Harvested { get; }

    public IReadOnlyList<Packet> Late { get; }

    private Lot Up(Lot lot, int year, int plants)
    {
        var packet = Library.PutUp(lot, 1, 50, Day(year, 2))[0];
        var growOut = Library.Grow(packet, null, Day(year, 3), GrowOutFacts.NotTold with { PlantsGrown = plants, PlantsSavedFrom = plants });
        return Library.Harvest(growOut, 900, Day(year, 10));
    }
}
