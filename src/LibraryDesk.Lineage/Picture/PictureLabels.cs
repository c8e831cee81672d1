using LibraryDesk.Lineage.Graph;

namespace LibraryDesk.Lineage.Picture;

/// <summary>Where the words of a node stand. Those of a wide picture take room along time and across it; neighbours keep clear of each other.</summary>
internal static class PictureLabels
{
    /// <summary>Least room between two labels on one line.</summary>
    public const double Between = 8;

    private const double HalfNode = 20;
    private const double BesideNode = 20;
    private const double AboveBase = -19;
    private const double BelowBase = 29;
    private const double SecondBase = 45;

    public static bool IsBeside(Box box) => box.Kind == NodeKind.Packet && box.Below.Count == 0;

    /// <summary>What stands in the middle of a line is named above or below it, in turns, so that neighbours do not meet.</summary>
    public static bool IsAbove(Box box) => !IsBeside(box) && box.Kind is NodeKind.GrowOut or NodeKind.Packet;

    /// <summary>Half the width of a centred label; 0 for one that stands beside its node.</summary>
    public static double Half(Box box) => IsBeside(box) ? 0 : Math.Max(PictureLine.WidthOf(box.Words.First, isSecond: false), PictureLine.WidthOf(box.Words.Second, isSecond: true)) / 2;

    /// <summary>Takes down how far node and words reach along time.</summary>
    public static void Measure(Box box)
    {
        box.Back = Math.Max(HalfNode, Half(box));
        box.Onward = IsBeside(box) ? BesideNode + PictureLine.WidthOf(box.Words.First, isSecond: false) : box.Back;
    }

    /// <summary>Room a node needs on its lane above its middle, and below it.</summary>
    public static (double Above, double Below) Room(Box box) =>
        (IsAbove(box) ? 36 : 24, IsBeside(box) || IsAbove(box) ? 24 : box.Words.Second.Length > 0 ? 52 : 36);

    public static IReadOnlyList<PictureLine> Wide(Box box, double x, double y)
    {
        if (IsBeside(box)) return [new(box.Words.First, x + BesideNode, y + 5, false, false)];
        if (IsAbove(box)) return [new(box.Words.First, x, y + AboveBase, true, false)];
        return box.Words.Second.Length == 0
            ? [new(box.Words.First, x, y + BelowBase, true, false)]
            : [new(box.Words.First, x, y + BelowBase, true, false), new(box.Words.Second, x, y + SecondBase, true, true)];
    }

    public static IReadOnlyList<PictureLine> Narrow(Box box, double column, double y) => box.Words.Second.Length == 0
        ? [new(box.Words.First, column, y + 5, false, false)]
        : [new(box.Words.First, column, y - 3, false, false), new(box.Words.Second, column, y + 14, false, true)];
}
