using System.Globalization;
using LibraryDesk.Lineage.Graph;

namespace LibraryDesk.Lineage.Picture;

/// <summary>Lays the lineage out along time with few crossings. Pure: the same graph and wish give the same picture.</summary>
public static class LineageLayout
{
    private const double Margin = 64;
    private const double LabelRoom = 96;
    private const double LaneHeight = 66;
    private const double LeastGap = 84;
    private const double AxisHeight = 44;
    private const double RowHeight = 56;
    private const double YearColumn = 56;
    private const double LabelColumn = 132;

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
        var firstYear = new DateOnly(boxes.Min(box => box.On).Year, 1, 1);
        var days = Math.Max(365, boxes.Max(box => box.On).DayNumber - firstYear.DayNumber + 60);
        var perDay = Math.Max(0.02, (wish.Width - Margin - LabelRoom) / days);
        foreach (var box in boxes.OrderBy(box => box.Number))
        {
            // On the time axis, but never on top of the parent: seed is often put up on the day it came in.
            var onAxis = Margin + ((box.On.DayNumber - firstYear.DayNumber) * perDay);
            box.Along = box.Above.Select(link => link.From.Along + LeastGap).Append(onAxis).Max();
        }

        var order = PictureOrder.Order(boxes);
        var lanes = PictureOrder.SetLanes(order, LeastGap);
        var top = 40.0;
        var width = Math.Max(wish.Width, boxes.Max(box => box.Along) + LabelRoom);
        var height = top + (lanes * LaneHeight) + 48 + AxisHeight;
        var years = Enumerable.Range(firstYear.Year, boxes.Max(box => box.On).Year - firstYear.Year + 1)
            .Select(year => new PictureYear(year, Round(Margin + ((new DateOnly(year, 1, 1).DayNumber - firstYear.DayNumber) * perDay))))
            .ToArray();
        return Draw(boxes, wish, width, height, years, box => (box.Along, top + (box.Strand!.Lane * LaneHeight)));
    }

    private static LineagePicture Narrow(IReadOnlyList<Box> boxes, PictureWish wish)
    {
        var rows = InRows(boxes);
        for (var row = 0; row < rows.Count; row++) rows[row].Along = row;
        var order = PictureOrder.Order(boxes);
        var lanes = PictureOrder.SetLanes(order, 0.5);
        var room = Math.Max(40, wish.Width - YearColumn - LabelColumn - 40);
        var step = lanes > 0 ? Math.Min(44, room / lanes) : 0;
        var years = new List<PictureYear>();
        foreach (var box in rows)
        {
            if (years.Count == 0 || years[^1].Year < box.On.Year) years.Add(new(box.On.Year, Round(32 + (box.Along * RowHeight))));
        }

        var height = (rows.Count * RowHeight) + 24;
        return Draw(boxes, wish, wish.Width, height, years, box => (YearColumn + 24 + (box.Strand!.Lane * step), 32 + (box.Along * RowHeight)));
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

    private static LineagePicture Draw(IReadOnlyList<Box> boxes, PictureWish wish, double width, double height, IReadOnlyList<PictureYear> years, Func<Box, (double X, double Y)> place)
    {
        var nodes = boxes.ToDictionary(box => box, box =>
        {
            var (x, y) = place(box);
            return new PictureNode(box.Id, box.Kind, box.Label, box.On, Round(x), Round(y), box.Mark, box.IsHere, box.InDoubt, box.Folded);
        });
        var stems = new List<PictureStem>();
        foreach (var link in boxes.SelectMany(box => box.Below))
        {
            var (from, to) = (nodes[link.From], nodes[link.To]);
            var condition = link.To.Mark == NodeMark.Off ? StemCondition.OffTypes : link.From.InDoubt ? StemCondition.InDoubt : StemCondition.Sound;
            stems.Add(new(from.Key, to.Key, Curve(from, to, wish.Direction), Round(3 + (9 * link.Share)), condition));
        }

        var inOrder = boxes.OrderBy(box => box.Along).ThenBy(box => box.Number).Select(box => nodes[box] with { Keys = Keys(box, nodes) }).ToArray();
        return new(wish.Direction, Round(width), Round(height), years, stems, inOrder);
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
