namespace LibraryDesk.Lineage.Picture;

/// <summary>
/// Puts boxes onto strands, orders the strands so that few stems cross, and gives each a lane. The layered idea (Sugiyama, Tagawa, Toda
/// 1981, IEEE Trans. Syst. Man Cybern. 11:109-125, cited from memory) with strands in place of single nodes: averages first, then each strand moved to
/// its best place (sifting).
/// </summary>
internal static class PictureOrder
{
    private const int MostSifted = 60;

    public static IReadOnlyList<Strand> Order(IReadOnlyList<Strand> strands)
    {
        var trunks = strands.Where(strand => !IsLeaf(strand)).ToList();
        if (trunks.Count > 2 && trunks.Count <= MostSifted) Sift(trunks);
        return WithLeaves(trunks);
    }

    /// <summary>Lanes from the top: as few as the order allows, two strands sharing one where they do not meet in time.</summary>
    public static double SetLanes(IReadOnlyList<Strand> order, double clearance)
    {
        var placed = new List<(double Start, double End, double Lane)>();
        var most = 0.0;
        foreach (var strand in order)
        {
            var (start, end) = Reach(strand);
            var lane = 0.0;
            foreach (var above in placed)
            {
                if (above.Start < end + clearance && start < above.End + clearance) lane = Math.Max(lane, above.Lane + 1);
            }

            strand.Lane = lane;
            placed.Add((start, end, lane));
            most = Math.Max(most, lane);
        }

        return most;
    }

    /// <summary>How many strands the stems run across.</summary>
    public static int Crossings(IReadOnlyList<Strand> order)
    {
        var place = new Dictionary<Strand, int>();
        for (var at = 0; at < order.Count; at++) place[order[at]] = at;
        var crossings = 0;
        foreach (var strand in order)
        {
            foreach (var link in strand.Boxes.SelectMany(box => box.Below))
            {
                if (!place.TryGetValue(link.To.Strand!, out var to)) continue;
                var from = place[strand];
                var (low, high) = from < to ? (from, to) : (to, from);
                for (var between = low + 1; between < high; between++)
                {
                    var (start, end) = (order[between].Start, order[between].End);
                    if (start <= link.To.Along && end >= link.From.Along) crossings++;
                }
            }
        }

        return crossings;
    }

    // Each box goes on with the child that most is made of; all other children begin strands of their own.
    public static IReadOnlyList<Strand> Strands(IReadOnlyList<Box> boxes)
    {
        var size = new Dictionary<Box, int>();
        foreach (var box in boxes.OrderByDescending(box => box.Number)) size[box] = 1 + box.Below.Sum(link => size.GetValueOrDefault(link.To));
        var strands = new List<Strand>();
        foreach (var first in boxes.OrderBy(box => box.Number))
        {
            if (first.Strand is not null) continue;
            var strand = new Strand(strands.Count);
            for (var box = first; box is not null; box = Next(box, size))
            {
                box.Strand = strand;
                strand.Boxes.Add(box);
            }

            strands.Add(strand);
        }

        return strands;
    }

    private static Box? Next(Box box, Dictionary<Box, int> size) => box.Below
        .Where(link => link.To.Strand is null && !link.To.IsLeaf)
        .OrderByDescending(link => link.Share == link.To.Above.Max(other => other.Share))
        .ThenByDescending(link => size[link.To])
        .ThenBy(link => link.To.Number)
        .FirstOrDefault()?.To;

    private static bool IsLeaf(Strand strand) => strand.Boxes is [{ IsLeaf: true }];

    private static void Sift(List<Strand> order)
    {
        Average(order);
        var best = Crossings(order);
        for (var round = 0; round < 4 && best > 0; round++)
        {
            var before = best;
            foreach (var strand in order.OrderBy(strand => strand.Number).ToArray())
            {
                var home = order.IndexOf(strand);
                order.RemoveAt(home);
                var bestAt = home;
                for (var at = 0; at <= order.Count; at++)
                {
                    if (at == home) continue;
                    order.Insert(at, strand);
                    var crossings = Crossings(order);
                    if (crossings < best) (best, bestAt) = (crossings, at);
                    order.RemoveAt(at);
                }

                order.Insert(bestAt, strand);
            }

            if (best == before) break;
        }
    }

    private static void Average(List<Strand> order)
    {
        for (var round = 0; round < 8; round++)
        {
            var place = new Dictionary<Strand, double>();
            for (var at = 0; at < order.Count; at++) place[order[at]] = at;
            var wish = order.ToDictionary(strand => strand, strand =>
            {
                var near = strand.Boxes.SelectMany(box => box.Above.Select(link => link.From).Concat(box.Below.Select(link => link.To)))
                    .Select(box => box.Strand!)
                    .Where(other => other != strand && place.ContainsKey(other))
                    .Select(other => place[other])
                    .DefaultIfEmpty(place[strand]);
                return (near.Average() + place[strand]) / 2;
            });
            order.Sort((left, right) => wish[left].CompareTo(wish[right]) is var by and not 0 ? by : left.Number.CompareTo(right.Number));
        }
    }

    // Leaves stand beside their lot: around it where the strand ends there, below it where the strand goes on.
    private static List<Strand> WithLeaves(List<Strand> trunks)
    {
        var order = new List<Strand>();
        foreach (var trunk in trunks)
        {
            var after = new List<Strand>();
            foreach (var box in trunk.Boxes)
            {
                var leaves = box.Below.Where(link => link.To.IsLeaf).Select(link => link.To)
                    .OrderBy(leaf => leaf.Folded.Count > 0).ThenBy(leaf => leaf.Number).Select(leaf => leaf.Strand!).ToArray();
                var above = box == trunk.Boxes[^1] ? leaves.Length / 2 : 0;
                order.AddRange(leaves[..above]);
                after.AddRange(leaves[above..]);
            }

            order.Add(trunk);
            order.AddRange(after);
        }

        return order;
    }

    // A strand fills its lane from where its first stem leaves the parent to where its last stem reaches the child.
    private static (double Start, double End) Reach(Strand strand)
    {
        var first = strand.Boxes[0];
        var last = strand.Boxes[^1];
        var start = first.Above.Count > 0 ? Math.Min(first.Along, (first.Along + first.Above.Max(link => link.From.Along)) / 2) : first.Along;
        var end = last.Below.Where(link => !link.To.IsLeaf).Select(link => (last.Along + link.To.Along) / 2).DefaultIfEmpty(last.Along).Max();
        return (Math.Min(start, strand.Boxes.Min(box => box.Along - box.Back)), Math.Max(end, strand.Boxes.Max(box => box.Along + box.Onward)));
    }
}
