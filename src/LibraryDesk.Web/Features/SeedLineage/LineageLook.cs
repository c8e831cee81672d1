using System.Globalization;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>How a reader looks at a lineage. All of it stands in the address, so that it works without script and can be sent to a friend.</summary>
/// <param name="Path">The page's address without a query.</param>
public sealed record LineageLook(string Path)
{
    /// <summary>What a reader can ask for at a node.</summary>
    public const string Centre = "centre";

    /// <inheritdoc cref="Centre" />
    public const string FoldBefore = "before";

    /// <inheritdoc cref="Centre" />
    public const string FoldAfter = "after";

    // No node has it: says that nothing is to be folded, where leaving it out would leave that to the desk.
    private const string Nothing = "0";

    /// <summary>True for the list.</summary>
    public bool AsList { get; init; }

    /// <summary>Lots whose packets are unfolded.</summary>
    public IReadOnlySet<NodeId> Opened { get; init; } = new HashSet<NodeId>();

    /// <summary>What is folded away; null to let the desk fold what has no room.</summary>
    public LineageFolds? Folds { get; init; }

    /// <summary>The node to centre on; null for none.</summary>
    public NodeId? Focus { get; init; }

    /// <summary>The address, with the section's name behind it.</summary>
    public string Address
    {
        get
        {
            var query = new List<string>();
            if (AsList) query.Add("view=list");
            query.AddRange(Fields.Select(part => $"{part.Name}={part.Value}"));
            return (query.Count == 0 ? Path : $"{Path}?{string.Join('&', query)}") + "#lineage";
        }
    }

    /// <summary>What stands in the address beside the view.</summary>
    public IEnumerable<(string Name, string Value)> Fields
    {
        get
        {
            if (Opened.Count > 0) yield return ("open", Text(Opened));
            if (Focus is { } focus) yield return ("focus", focus.Value.ToString(CultureInfo.InvariantCulture));
            if (Folds is null) yield break;
            yield return ("before", Text(Folds.Before));
            yield return ("after", Text(Folds.After));
        }
    }

    /// <summary>Reads what stands in the address; what is no number is passed over.</summary>
    public static LineageLook Read(string path, string? view, string? open, string? focus, string? before, string? after) => new(path)
    {
        AsList = view == "list",
        Opened = Nodes(open),
        Focus = Nodes(focus).Select(node => (NodeId?)node).FirstOrDefault(),
        Folds = before is null && after is null ? null : new(Nodes(before), Nodes(after)),
    };

    /// <summary>Looks as asked at a node.</summary>
    /// <param name="deed">One of <see cref="Centre"/>, <see cref="FoldBefore"/> and <see cref="FoldAfter"/>; anything else changes nothing.</param>
    /// <param name="at">The node.</param>
    /// <param name="folds">What is folded now.</param>
    public LineageLook Do(string? deed, NodeId at, LineageFolds folds)
    {
        ArgumentNullException.ThrowIfNull(folds);
        return deed switch
        {
            Centre => this with { Focus = at },
            FoldBefore => this with { Folds = folds with { Before = With(folds.Before, at) } },
            FoldAfter => this with { Folds = folds with { After = With(folds.After, at) } },
            _ => this,
        };
    }

    /// <summary>Opens what is folded into a node of the picture again.</summary>
    /// <param name="node">A node that others are folded into.</param>
    /// <param name="folds">What is folded now.</param>
    public LineageLook Open(PictureNode node, LineageFolds folds)
    {
        ArgumentNullException.ThrowIfNull(node);
        ArgumentNullException.ThrowIfNull(folds);
        return node.Folding switch
        {
            PictureFolding.Before => this with { Folds = folds with { Before = Without(folds.Before, node.Id) } },
            PictureFolding.After => this with { Folds = folds with { After = Without(folds.After, node.Id) } },
            _ => this with { Opened = With(Opened, node.Id) },
        };
    }

    private static HashSet<NodeId> With(IEnumerable<NodeId> nodes, NodeId node) => [.. nodes, node];

    private static HashSet<NodeId> Without(IEnumerable<NodeId> nodes, NodeId node) => [.. nodes.Where(one => one != node)];

    private static HashSet<NodeId> Nodes(string? text) =>
        [.. (text ?? "").Split(',').Select(part => long.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : 0).Where(id => id > 0).Select(id => new NodeId(id))];

    private static string Text(IReadOnlySet<NodeId> nodes) => nodes.Count == 0 ? Nothing : string.Join(',', nodes.Select(node => node.Value).Order().Select(id => id.ToString(CultureInfo.InvariantCulture)));
}
