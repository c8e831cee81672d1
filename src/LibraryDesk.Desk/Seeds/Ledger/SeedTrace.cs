using System.Data;
using System.Data.Common;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Somebody who has, or had last, a packet made of the traced seed.</summary>
public sealed record SeedHolder(PacketId Packet, PersonId Person);

/// <summary>Where seed came from, what became of it, and who has it. The node itself is in neither list; its own holder is among the holders.</summary>
/// <param name="Node">The node that was asked about.</param>
/// <param name="Ancestors">Everything its seed came from, oldest first.</param>
/// <param name="Descendants">Everything that was made of its seed, oldest first.</param>
/// <param name="Holders">Who has or had last a packet of it.</param>
public sealed record SeedTrace(NodeId Node, IReadOnlyList<NodeId> Ancestors, IReadOnlyList<NodeId> Descendants, IReadOnlyList<SeedHolder> Holders)
{
    /// <summary>Follows the seed of one code up and down in a single question; null when nothing has that code.</summary>
    /// <param name="question">A <see cref="TraceQuestion"/> of the code's kind, ready to be asked.</param>
    /// <param name="stop">Stops.</param>
    internal static async Task<SeedTrace?> ReadAsync(DbCommand question, CancellationToken stop)
    {
        var (ancestors, descendants, holders) = (new List<NodeId>(), new List<NodeId>(), new List<SeedHolder>());
        await using (var rows = await question.ExecuteReaderAsync(CommandBehavior.SingleResult, stop))
        {
            while (await rows.ReadAsync(stop))
            {
                var node = new NodeId(rows.GetInt64(1));
                (rows.GetInt32(0) == TraceQuestion.Up ? ancestors : descendants).Add(node);
                if (!rows.IsDBNull(2)) holders.Add(new(new(node.Value), new(rows.GetGuid(2))));
            }
        }
        if (descendants.Count == 0) return null;

        // Numbers rise from parent to child, so their order is the order of age, and the node asked about is the last above and the first below.
        ancestors.Sort(static (left, right) => left.Value.CompareTo(right.Value));
        descendants.Sort(static (left, right) => left.Value.CompareTo(right.Value));
        holders.Sort(static (left, right) => left.Packet.Value.CompareTo(right.Packet.Value));
        return new(descendants[0], ancestors[..^1], descendants[1..], holders);
    }
}
