using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides how packets are put up.</summary>
public static class PackingRules
{
    public const string NoPacketsCode = "packing.none";
    public const string TooManyCode = "packing.too-many";

    /// <summary>The most packets put up in one entry.</summary>
    public const int MostPackets = 500;

    /// <summary>Puts up packets from a lot. Held seed is not put up.</summary>
    /// <param name="lot">The lot as it stands.</param>
    /// <param name="holdsAbove">Holds on it and everything upstream.</param>
    /// <param name="packets">The packets wanted, each amount in either unit.</param>
    /// <param name="packedOn">The day.</param>
    /// <param name="place">Where they are kept; null when not said.</param>
    /// <param name="today">Today.</param>
    public static Outcome<Packeted> PutUp(Lot lot, IReadOnlyList<Hold> holdsAbove, IReadOnlyList<NewPacket> packets, DateOnly packedOn, string? place, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(lot);
        ArgumentNullException.ThrowIfNull(packets);
        if (packets.Count == 0) return new Refusal(NoPacketsCode, "Say how many packets to put up.");
        if (packets.Count > MostPackets) return new Refusal(TooManyCode, $"Put up at most {MostPackets} packets in one go.");
        if (Checks.Days(packedOn, today, lot.MadeOn) is { } wrongDay) return wrongDay;
        if (Checks.Standing(holdsAbove) is { } hold) return SeedRefusals.OnHold(hold);
        if (Checks.Place(place) is { } wrongPlace) return wrongPlace;
        var left = SeedStock.Of(lot);
        var put = new List<NewPacket>();
        foreach (var packet in packets)
        {
            if (!Checks.Take(left, packet.Holds).TryGet(out var seed, out var no)) return no.Code == SeedRefusals.MoreThanThereCode ? TooLittle(lot, packets, put.Count) : no;
            left = left with { Stock = left.Stock!.Value.Less(seed) };
            put.Add(packet with { Holds = seed });
        }

        return new Packeted(lot.Id, packedOn, put, place?.Trim());
    }

    private static Refusal TooLittle(Lot lot, IReadOnlyList<NewPacket> packets, int enoughFor)
    {
        var asked = packets.Count == 1 ? Sentence.Of($"{packets.Count} packet") : Sentence.Of($"{packets.Count} packets");
        return enoughFor == 0
            ? new(SeedRefusals.MoreThanThereCode, $"{asked} asked for, but {lot.Stock.InWords} will not do for one. Put less into each, or count the stock first.")
            : new(SeedRefusals.MoreThanThereCode, $"{asked} asked for, but {lot.Stock.InWords} will do for {enoughFor} only. Put up fewer, put less into each, or count the stock first.");
    }
}
