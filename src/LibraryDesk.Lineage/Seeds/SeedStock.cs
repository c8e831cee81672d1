namespace LibraryDesk.Lineage.Seeds;

/// <summary>Whatever holds seed, for the acts that do not mind which: an accession, a lot, a packet, or the harvest of a grow-out.</summary>
/// <param name="Node">The node.</param>
/// <param name="Stock">What is there; null for a grow-out nothing came back of.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="Began">The day it came to be: nothing made of it is older.</param>
/// <param name="Species">The species; null when not known. A packet and a grow-out have their lot's, so it is null for them.</param>
/// <param name="IsVoid">True when its entry was undone.</param>
public sealed record SeedStock(NodeId Node, Quantity? Stock, long? ThousandSeedMilligrams, DateOnly Began, string? Species, bool IsVoid)
{
    /// <summary>An accession's seed.</summary>
    public static SeedStock Of(Accession accession) =>
        new(accession.Id.Node, accession.Stock, accession.ThousandSeedMilligrams, accession.ReceivedOn, accession.Species, accession.IsVoid);

    /// <summary>A lot's seed.</summary>
    public static SeedStock Of(Lot lot) => new(lot.Id.Node, lot.Stock, lot.ThousandSeedMilligrams, lot.MadeOn, lot.Species, lot.IsVoid);

    /// <summary>A packet's seed.</summary>
    public static SeedStock Of(Packet packet) => new(packet.Id.Node, packet.Stock, null, packet.PackedOn, null, packet.Standing == PacketStanding.Void);

    /// <summary>A harvest's seed.</summary>
    public static SeedStock Of(GrowOut growOut) => new(growOut.Id.Node, growOut.Stock, growOut.ThousandSeedMilligrams, growOut.SownOn, null, growOut.IsVoid);
}
