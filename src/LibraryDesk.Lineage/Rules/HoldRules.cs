using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides about holds and recalls.</summary>
public static class HoldRules
{
    public const string HeldAlreadyCode = "hold.held-already";
    public const string NotHeldCode = "hold.not-held";
    public const string RecalledAlreadyCode = "recall.recalled-already";
    public const string UseRecallCode = "hold.use-recall";

    /// <summary>Stops lending of a node and all downstream of it.</summary>
    /// <param name="hold">The new hold's number.</param>
    /// <param name="node">The accession, lot or packet.</param>
    /// <param name="began">The day it came to be.</param>
    /// <param name="reason">Why. A recall has its own act.</param>
    /// <param name="holdsOnNode">Holds on the node itself.</param>
    /// <param name="heldOn">The day.</param>
    /// <param name="today">Today.</param>
    /// <param name="isVoid">True for a node whose entry was undone: there is nothing to hold.</param>
    public static Outcome<Held> Hold(HoldId hold, NodeId node, DateOnly began, HoldReason reason, IReadOnlyList<Hold> holdsOnNode, DateOnly heldOn, DateOnly today, bool isVoid = false)
    {
        ArgumentNullException.ThrowIfNull(holdsOnNode);
        if (isVoid) return SeedRefusals.NoSeed;
        if (reason == HoldReason.Recall) return new Refusal(UseRecallCode, "To call seed back, start a recall: it also makes the list of packets.");
        if (Checks.Days(heldOn, today, began) is { } wrongDay) return wrongDay;
        if (holdsOnNode.Any(standing => standing.Stands && standing.Reason == reason)) return new Refusal(HeldAlreadyCode, "This seed is held for that reason already.");
        return new Held(hold, node, reason, heldOn);
    }

    /// <summary>Lifts a hold, or closes a recall.</summary>
    public static Outcome<Released> Release(Hold hold, DateOnly releasedOn, string? why, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(hold);
        if (!hold.Stands) return new Refusal(NotHeldCode, "This hold was lifted already.");
        if (Checks.Days(releasedOn, today, hold.HeldOn) is { } wrongDay) return wrongDay;
        if (Checks.Text(why, "Say why it is lifted in a few words.") is { } noReason) return noReason;
        return new Released(hold.Id, hold.Node, releasedOn, why!.Trim());
    }

    /// <summary>Calls back everything downstream of a node.</summary>
    /// <param name="hold">The number of the hold that comes with it.</param>
    /// <param name="node">Where the trouble began.</param>
    /// <param name="began">The day it came to be.</param>
    /// <param name="holdsAbove">Holds on the node and everything upstream: a recall that is under way already covers it.</param>
    /// <param name="why">In words.</param>
    /// <param name="packets">The recall list.</param>
    /// <param name="recalledOn">The day.</param>
    /// <param name="today">Today.</param>
    /// <param name="isVoid">True for a node whose entry was undone: there is nothing to call back.</param>
    public static Outcome<Recalled> Recall(HoldId hold, NodeId node, DateOnly began, IReadOnlyList<Hold> holdsAbove, string? why, IReadOnlyList<PacketId> packets, DateOnly recalledOn, DateOnly today, bool isVoid = false)
    {
        ArgumentNullException.ThrowIfNull(holdsAbove);
        ArgumentNullException.ThrowIfNull(packets);
        if (isVoid) return SeedRefusals.NoSeed;
        if (Checks.Days(recalledOn, today, began) is { } wrongDay) return wrongDay;
        if (holdsAbove.Any(standing => standing.Stands && standing.Reason == HoldReason.Recall)) return new Refusal(RecalledAlreadyCode, "A recall of this seed, or of seed it came from, is under way. Go on with that one, or close it first.");
        if (Checks.Text(why, "Say why it is called back in a few words.") is { } noReason) return noReason;
        return new Recalled(hold, node, why!.Trim(), recalledOn, packets.Distinct().OrderBy(packet => packet.Value).ToArray());
    }
}
