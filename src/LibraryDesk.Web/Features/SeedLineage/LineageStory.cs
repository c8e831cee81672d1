using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Graph;
using LibraryDesk.Lineage.Names;
using LibraryDesk.Lineage.Picture;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Web.Features.SeedLineage.SeedLineageText;

namespace LibraryDesk.Web.Features.SeedLineage;

/// <summary>A lineage as pages tell it: the graph, what is in doubt, what plants showed, and words and links for each node.</summary>
public sealed class LineageStory
{
    // More nodes than this are not taken in at a glance, and a phone would scroll through them for minutes.
    private const int MostDrawn = 60;

    private readonly SeedState _state;
    private readonly IReadOnlyDictionary<long, GoesBy> _names;

    /// <param name="state">Everything up and down from <paramref name="here"/>.</param>
    /// <param name="names">What the nodes go by.</param>
    /// <param name="here">The node the page is about.</param>
    /// <param name="plants">Plants tied to packets of the lineage that were determined.</param>
    public LineageStory(SeedState state, IReadOnlyDictionary<long, GoesBy> names, NodeId here, IReadOnlyList<DeterminedPlant> plants)
    {
        _state = state;
        _names = names;
        Here = here;
        Graph = LineageGraph.Of(state);
        InDoubt = Doubts();
        Plants = plants;
        Marks = PlantsShowed();
    }

    public LineageGraph Graph { get; }

    public NodeId Here { get; }

    public IReadOnlySet<NodeId> InDoubt { get; }

    public IReadOnlyDictionary<NodeId, NodeMark> Marks { get; }

    public IReadOnlyList<DeterminedPlant> Plants { get; }

    /// <summary>What is folded away: as the reader asked, else what has no room.</summary>
    public LineageFolds FoldsOf(LineageLook look) => look.Folds ?? LineageFolds.For(Graph, Wish(look, PictureDirection.Narrow, 0), MostDrawn);

    public LineagePicture Draw(LineageLook look, PictureDirection direction, double width) =>
        LineageLayout.Lay(Graph, Wish(look, direction, width) with { Folds = FoldsOf(look), Words = (node, folding, count) => NodeWords.Beside(this, direction, node, folding, count) });

    private PictureWish Wish(LineageLook look, PictureDirection direction, double width) => new(Here, Marks, InDoubt, direction, width, Opened: look.Opened, Focus: look.Focus);

    /// <summary>The page of a node; null where it has none.</summary>
    public string? HrefOf(NodeId node) => Graph[node].Kind switch
    {
        NodeKind.Lot => $"/lots/{Graph[node].Label}",
        NodeKind.Packet => $"/p/{Graph[node].Label}",
        _ => null,
    };

    /// <summary>What the node is, for the list and for screen readers.</summary>
    public static string WordOf(NodeKind kind) => kind switch
    {
        NodeKind.Accession => Say["Accession"],
        NodeKind.Lot => Say["Lot"],
        NodeKind.Packet => Say["Packet"],
        _ => Say["Grow-out"],
    };

    /// <summary>The name a node goes by, in quotes; empty without one.</summary>
    public string NameOf(NodeId node) => _names.GetValueOrDefault(node.Value) is { Variety: { } variety } ? Quotes.Of(variety) : "";

    /// <summary>A few words on a node: how it came, how it was made, how it was grown.</summary>
    public string NoteOf(NodeId node)
    {
        if (_state.Find(new AccessionId(node.Value)) is { } accession) return SeedSourceWord(accession);
        if (_state.Find(new LotId(node.Value)) is { } lot) return LotWord(lot);
        if (_state.Find(new GrowOutId(node.Value)) is { } growOut) return GrowOutWord(growOut);
        return _state.Find(new PacketId(node.Value)) is { } packet ? SeedWords.Standing(packet.Standing) : "";
    }

    /// <summary>The nodes a node came from, with their shares where there are several.</summary>
    public string FromOf(NodeId node)
    {
        var above = Graph.Above(node);
        return string.Join(", ", above.Select(edge => above.Count == 1 ? PlaceOf(edge.Parent) : $"{PlaceOf(edge.Parent)} ({SeedWords.Percent(edge.Share)})"));
    }

    /// <summary>What a node is called where a reader sees it.</summary>
    public string PlaceOf(NodeId node) => SeedWords.Place(Graph[node].Kind, Graph[node].Label);

    public NodeMark MarkOf(NodeId node) => Marks.GetValueOrDefault(node);

    private static string SeedSourceWord(Accession accession) => accession.Library ?? accession.Source switch
    {
        SeedSource.Donor => Say["given by a donor"],
        SeedSource.SwapTable => Say["swap table, label only"],
        SeedSource.Trade => Say["bought"],
        SeedSource.Library => Say["from another library"],
        _ => Say["nobody knows from where"],
    };

    private string LotWord(Lot lot)
    {
        var above = Graph.Above(lot.Id.Node);
        return lot.Origin switch
        {
            LotOrigin.Blend => Say[$"blend, {string.Join(" + ", above.Select(edge => SeedWords.Percent(edge.Share)))}"],
            LotOrigin.Split => Say["part of another lot"],
            LotOrigin.Harvest => Say["harvest"],
            _ => Say["as it came in"],
        };
    }

    private static string GrowOutWord(GrowOut growOut) => growOut.Facts switch
    {
        { OffTypesRemoved: > 0 and var removed } => Say.Count(removed, $"{removed} off-type pulled", $"{removed} off-types pulled"),
        { OffTypesSeen: > 0 and var seen } => Say.Count(seen, $"{seen} off-type seen", $"{seen} off-types seen"),
        { OffTypesSeen: 0 } => Say["no off-types"],
        _ => Say["grown for seed"],
    };

    // In doubt: what came without anybody's word, what is held for its name or recalled, and everything made of the latter.
    private HashSet<NodeId> Doubts()
    {
        var doubtful = _state.Accessions.Where(accession => accession.Source is SeedSource.SwapTable or SeedSource.Unknown).Select(accession => accession.Id.Node).ToHashSet();
        foreach (var hold in _state.Holds.Where(hold => hold.Stands && hold.Reason is HoldReason.NameInDoubt or HoldReason.Recall && Graph.Has(hold.Node)))
        {
            doubtful.Add(hold.Node);
            doubtful.UnionWith(Graph.Descendants(hold.Node).Select(node => node.Id));
        }
        return doubtful;
    }

    /// <summary>True when a determined plant is what its packet's chain was said to be: the desk's own claims are left out, since they say what the plant said.</summary>
    public bool Fits(DeterminedPlant plant)
    {
        var said = _state.Claims
            .Where(claim => !claim.IsWithdrawn && claim.Grounds != ClaimGrounds.DeskDetermination && Graph.Has(claim.Node) && (claim.Node == plant.Lot || Graph.IsAncestor(claim.Node, plant.Lot))).ToArray();
        return said.All(claim => claim.Species is not { } species || species == plant.Taxon)
            && (plant.Variety is not { } variety || said.All(claim => claim.Variety is not { } named || string.Equals(named, variety, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>
    /// What speaks for and against the name of the page's own node: how its seed came, how it was grown, and determined plants. A plant speaks
    /// for the lot its packet was put up from; a plant of the page's own packet speaks for that packet alone, so that none counts twice.
    /// </summary>
    public NameEvidence Evidence(bool isHybrid) => NameEvidence.Of(_state) with
    {
        IsHybrid = isHybrid,
        Determined = Plants.GroupBy(plant => plant.Packet == Here ? plant.Packet : plant.Lot)
            .ToDictionary(plants => plants.Key, plants => (plants.Count(Fits), plants.Count(plant => !Fits(plant)))),
        UnderOtherNames = UnderOtherNames,
    };

    /// <summary>
    /// Parts of blends upstream that go by another name than the blend. A blend that was given a name of its own, which no part has, is not one
    /// of its parts mixed with others.
    /// </summary>
    public IReadOnlySet<NodeId> UnderOtherNames => Graph.Ancestors(Here).Append(Graph[Here]).Select(node => (node.Id, Parts: Graph.Above(node.Id)))
        .Where(blend => blend.Parts.Count > 1 && VarietyOf(blend.Id) is { } name && blend.Parts.Any(part => Same(VarietyOf(part.Parent), name)))
        .SelectMany(blend => blend.Parts.Select(part => part.Parent).Where(part => VarietyOf(part) is { } other && !Same(other, VarietyOf(blend.Id))))
        .ToHashSet();

    /// <summary>Different varieties that are claimed for the page's own node, each once.</summary>
    public IReadOnlyList<string> StandingNames =>
        [.. _state.Claims.Where(claim => !claim.IsWithdrawn && claim.Node == Here).Select(claim => claim.Variety).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)];

    /// <summary>True where history alone is not the last word on the page's name: a plant is off, or the seed is called back or held for its name.</summary>
    public bool IsNameInDoubt => Plants.Any(plant => !Fits(plant))
        || _state.Holds.Any(hold => hold.Stands && hold.Reason is HoldReason.NameInDoubt or HoldReason.Recall && Graph.Has(hold.Node) && (hold.Node == Here || Graph.IsAncestor(hold.Node, Here)));

    private string? VarietyOf(NodeId node) => _names.GetValueOrDefault(node.Value)?.Variety;

    private static bool Same(string? one, string? other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private Dictionary<NodeId, NodeMark> PlantsShowed() => Plants.Where(plant => Graph.Has(plant.Packet))
        .GroupBy(plant => plant.Packet)
        .ToDictionary(plants => plants.Key, plants => plants.All(Fits) ? NodeMark.Fits : NodeMark.Off);
}
