using System.Globalization;
using LibraryDesk.Lineage.Graph;

namespace LibraryDesk.Lineage.Picture;

/// <summary>Lays the lineage out along time with few crossings. Pure: the same graph and wish give the same picture.</summary>
public static class LineageLayout
{
    /// <summary>Width of the column of words at the right of a narrow picture.</summary>
    public const double LabelColumn = 138;

    /// <summary>Height of a row of a narrow picture: each node has one of its own, so it is also how high a node answers to a finger.</summary>
    public const double RowHeight = 62;

    private const double Margin = 100;
    private const double Edge = 16;
    private const double LeastGap = 84;
    private const double AxisHeight = 44;
    // How much of the room that days would have on the whole width they get, and how far a node stands from its parent at least: from the most to the least.
    private static readonly (double Days, double Gap)[] Eases = [(1, LeastGap), (0.75, LeastGap), (0.5, LeastGap), (0.25, LeastGap), (0, LeastGap), (0, 74), (0, 64)];

    private const double YearColumn = 56;
    private const double YearLabel = 44;

    /// <summary>Lays out a graph. An empty graph gives an empty picture.</summary>
    public static LineagePicture Lay(LineageGraph graph, PictureWish wish)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentOutOfRangeException.ThrowIfLessThan(wish.PacketsShown, 2, nameof(wish));
        var boxes = new PictureFold(graph, wish).Boxes;
        if (boxes.Count == 0) return new(wish.Direction, wish.Width, AxisHeight, [], [], []);
        return wish.Direction == PictureDirection.Wide ? Wide(boxes, wish) : Narrow(boxes, wish);
    }

    private static LineagePicture Wide(IReadOnlyList<Box> boxes, PictureWish wish)
    {
        foreach (var box in boxes) PictureLabels.Measure(box);
        var strands = PictureOrder.Strands(boxes);
        var years = FitAlong(boxes, wish);
        var order = PictureOrder.Order(strands);
        PictureOrder.SetLanes(order, Edge);
        var middles = LaneMiddles(boxes);
        var width = Math.Max(wish.Width, Reached(boxes));
        var height = middles[^1] + boxes.Where(box => box.Strand!.Lane == middles.Count - 1).Max(box => PictureLabels.Room(box).Below) + AxisHeight;
        return Draw(boxes, wish, width, height, years, box => (box.Along, middles[(int)box.Strand!.Lane]), PictureLabels.Wide);
    }

    // What would be wider than there is room gives up room between days first, then some between nodes and the margin before the first. The order and the years stay.
    private static List<PictureYear> FitAlong(IReadOnlyList<Box> boxes, PictureWish wish)
    {
        var years = SetAlong(boxes, wish, Eases[0]);
        foreach (var ease in Eases.Skip(1))
        {
            if (Reached(boxes) <= wish.Width) return years;
            years = SetAlong(boxes, wish, ease);
        }

        var over = Math.Min(Reached(boxes) - wish.Width, Math.Min(boxes.Min(box => box.Along - box.Back) - Edge, Margin - YearLabel));
        if (over <= 0) return years;
        foreach (var box in boxes) box.Along -= over;
        return [.. years.Select(year => year with { At = Round(year.At - over) })];
    }

    private static double Reached(IReadOnlyList<Box> boxes) => boxes.Max(box => box.Along + box.Onward) + Edge;

    // Each node stands in its year, on its day where there is room: never on top of its parent, and never so near that their words would meet.
    // A year with much in it is drawn wider.
    private static List<PictureYear> SetAlong(IReadOnlyList<Box> boxes, PictureWish wish, (double Days, double Gap) ease)
    {
        var first = boxes.Min(box => box.On).Year;
        var days = Math.Max(365, boxes.Max(box => box.On).DayNumber - new DateOnly(first, 1, 1).DayNumber + 60);
        var perDay = Math.Max(0.02, ease.Days * (wish.Width - Margin - Margin) / days);
        var begins = new List<double> { Margin };
        var reached = Margin;
        foreach (var box in InRows(boxes))
        {
            while (first + begins.Count <= box.On.Year) begins.Add(Math.Max(begins[^1] + (365 * perDay), reached + ease.Gap / 2));
            var from = begins[box.On.Year - first] + ((box.On.DayOfYear - 1) * perDay);
            foreach (var link in box.Above) from = Math.Max(from, link.From.Along + ease.Gap);
            foreach (var other in box.Strand!.Boxes.TakeWhile(other => other != box))
            {
                if (PictureLabels.IsAbove(other) == PictureLabels.IsAbove(box)) from = Math.Max(from, other.Along + PictureLabels.Half(other) + PictureLabels.Half(box) + PictureLabels.Between);
            }

            box.Along = from;
            reached = Math.Max(reached, from);
        }

        return Labelled(begins.Select((at, year) => new PictureYear(first + year, Round(at))));
    }

    // Of years that lie closer than their numbers are wide, some are left out.
    private static List<PictureYear> Labelled(IEnumerable<PictureYear> years)
    {
        var kept = new List<PictureYear>();
        foreach (var year in years)
        {
            if (kept.Count == 0 || year.At - kept[^1].At >= YearLabel) kept.Add(year);
        }

        return kept;
    }

    private static List<double> LaneMiddles(IReadOnlyList<Box> boxes)
    {
        var middles = new List<double>();
        var end = Edge;
        foreach (var lane in boxes.GroupBy(box => box.Strand!.Lane).OrderBy(lane => lane.Key))
        {
            var rooms = lane.Select(PictureLabels.Room).ToArray();
            middles.Add(end + rooms.Max(room => room.Above));
            end = middles[^1] + rooms.Max(room => room.Below);
        }

        return middles;
    }

    private static LineagePicture Narrow(IReadOnlyList<Box> boxes, PictureWish wish)
    {
        var rows = InRows(boxes);
        for (var row = 0; row < rows.Count; row++) rows[row].Along = row;
        var order = PictureOrder.Order(PictureOrder.Strands(boxes));
        var lanes = PictureOrder.SetLanes(order, 0.5);
        var room = Math.Max(40, wish.Width - YearColumn - LabelColumn - 40);
        var step = lanes > 0 ? Math.Min(44, room / lanes) : 0;
        var years = new List<PictureYear>();
        foreach (var box in rows)
        {
            if (years.Count == 0 || years[^1].Year < box.On.Year) years.Add(new(box.On.Year, Round(32 + (box.Along * RowHeight))));
        }

        var height = (rows.Count * RowHeight) + 24;
        return Draw(boxes, wish, wish.Width, height, years, box => (YearColumn + 24 + (box.Strand!.Lane * step), 32 + (box.Along * RowHeight)), (box, _, y) => PictureLabels.Narrow(box, wish.Width - LabelColumn, y));
    }

    // By day, but a parent always before its child even when somebody noted the days the wrong way round.
    private static List<Box> InRows(IReadOnlyList<Box> boxes)
    {
        var waiting = boxes.ToDictionary(box => box, box => box.Above.Count);
        var ready = new PriorityQueue<Box, (DateOnly, long)>();
        foreach (var box in boxes.Where(box => box.Above.Count == 0)) ready.Enqueue(box, (box.On, box.Number));
        var rows = new List<Box>();
        while (ready.TryDequeue(out var box, out _))
        {
            rows.Add(box);
            foreach (var link in box.Below)
            {
                if (--waiting[link.To] == 0) ready.Enqueue(link.To, (link.To.On, link.To.Number));
            }
        }

        return rows;
    }

    private static LineagePicture Draw(IReadOnlyList<Box> boxes, PictureWish wish, double width, double height, IReadOnlyList<PictureYear> years, Func<Box, (double X, double Y)> place, Func<Box, double, double, IReadOnlyList<PictureLine>> lines)
    {
        var kin = Kin(boxes, wish);
        var nodes = boxes.ToDictionary(box => box, box =>
        {
            var (x, y) = place(box);
            return new PictureNode(box.Id, box.Kind, box.Label, box.On, Round(x), Round(y), box.Mark, box.IsHere, box.InDoubt, box.Folded) { Folding = box.Folding, IsDim = !kin.Contains(box), Lines = lines(box, Round(x), Round(y)) };
        });
        var stems = new List<PictureStem>();
        foreach (var link in boxes.SelectMany(box => box.Below))
        {
            var (from, to) = (nodes[link.From], nodes[link.To]);
            var condition = link.To.Mark == NodeMark.Off ? StemCondition.OffTypes : link.From.InDoubt ? StemCondition.InDoubt : StemCondition.Sound;
            stems.Add(new(from.Key, to.Key, Curve(from, to, wish.Direction), Round(3 + (9 * link.Share)), condition, from.IsDim || to.IsDim));
        }

        var inOrder = boxes.OrderBy(box => box.Along).ThenBy(box => box.Number).Select(box => nodes[box] with { Keys = Keys(box, nodes) }).ToArray();
        return new(wish.Direction, Round(width), Round(height), years, stems, inOrder);
    }

    // The focus, all it came from and all that was made of it; everything where there is no focus.
    private static HashSet<Box> Kin(IReadOnlyList<Box> boxes, PictureWish wish)
    {
        if (wish.Focus is not { } focus || boxes.FirstOrDefault(box => box.Folding == PictureFolding.None && box.Id == focus) is not { } centre) return [.. boxes];
        var kin = new HashSet<Box> { centre };
        foreach (var next in (Func<Box, IEnumerable<Box>>[])[box => box.Above.Select(link => link.From), box => box.Below.Select(link => link.To)])
        {
            var open = new Stack<Box>([centre]);
            while (open.TryPop(out var box))
            {
                foreach (var further in next(box))
                {
                    if (kin.Add(further)) open.Push(further);
                }
            }
        }

        return kin;
    }

    private static PictureKeys Keys(Box box, Dictionary<Box, PictureNode> nodes)
    {
        var parent = box.Above.OrderByDescending(link => link.Share).FirstOrDefault()?.From;
        var child = box.Below.OrderByDescending(link => link.To.Strand == box.Strand).ThenByDescending(link => link.Share).FirstOrDefault()?.To;
        var siblings = parent?.Below.Select(link => link.To).OrderBy(sibling => nodes[sibling].Y).ThenBy(sibling => nodes[sibling].X).ToList() ?? [];
        var at = siblings.IndexOf(box);
        return new(
            parent is null ? null : nodes[parent].Key,
            child is null ? null : nodes[child].Key,
            at > 0 ? nodes[siblings[at - 1]].Key : null,
            at >= 0 && at + 1 < siblings.Count ? nodes[siblings[at + 1]].Key : null);
    }

    private static string Curve(PictureNode from, PictureNode to, PictureDirection direction)
    {
        if (direction == PictureDirection.Wide)
        {
            var middle = Round((from.X + to.X) / 2);
            return string.Create(CultureInfo.InvariantCulture, $"M{from.X} {from.Y}C{middle} {from.Y} {middle} {to.Y} {to.X} {to.Y}");
        }

        var half = Round((from.Y + to.Y) / 2);
        return string.Create(CultureInfo.InvariantCulture, $"M{from.X} {from.Y}C{from.X} {half} {to.X} {half} {to.X} {to.Y}");
    }

    private static double Round(double value) => Math.Round(value, 1);
}
