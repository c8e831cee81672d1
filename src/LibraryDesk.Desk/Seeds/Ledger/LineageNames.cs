using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>The name a node goes by.</summary>
/// <param name="Variety">The variety claimed for it, or for the seed it came from; null when none was.</param>
/// <param name="Species">The species under the guide's id; null when not known.</param>
/// <param name="OthersToo">True for a blend whose sources go by different varieties: the name is the largest share's.</param>
public sealed record GoesBy(string? Variety, string? Species, bool OthersToo = false)
{
    public static GoesBy NotKnown { get; } = new(null, null);
}

/// <summary>Works out the names of nodes: its own claims first, else the name of the seed it came from.</summary>
internal static class LineageNames
{
    public static async Task<IReadOnlyDictionary<long, GoesBy>> OfAsync(LibraryDbContext db, IReadOnlyCollection<long> nodes, CancellationToken stop)
    {
        if (nodes.Count == 0) return new Dictionary<long, GoesBy>();
        var edges = await LineageSql.EdgesAboveAny(db, nodes).AsNoTracking().ToListAsync(stop);
        return await OfAsync(db, nodes, edges, new Dictionary<long, GoesBy>(), stop);
    }

    /// <summary>The names of nodes, where those of what they came from are known in part.</summary>
    /// <param name="db">The library.</param>
    /// <param name="nodes">The nodes.</param>
    /// <param name="edges">Everything upstream of them, up to nodes whose names are known.</param>
    /// <param name="known">The names known.</param>
    /// <param name="stop">Stops.</param>
    public static async Task<IReadOnlyDictionary<long, GoesBy>> OfAsync(
        LibraryDbContext db, IReadOnlyCollection<long> nodes, IReadOnlyList<LineageEdgeRow> edges, IReadOnlyDictionary<long, GoesBy> known, CancellationToken stop)
    {
        var all = edges.Select(edge => edge.ParentId).Concat(edges.Select(edge => edge.ChildId)).Concat(nodes).Distinct().ToArray();
        var claims = await db.Set<NameClaimRow>().AsNoTracking().Where(claim => all.Contains(claim.NodeId) && !claim.IsWithdrawn).OrderBy(claim => claim.Id).ToListAsync(stop);
        var lots = await db.Set<LotRow>().Where(lot => all.Contains(lot.Id) && lot.Species != null).Select(lot => new { lot.Id, lot.Species }).ToListAsync(stop);
        return WorkOut(all, edges, claims, lots.ToDictionary(lot => lot.Id, lot => lot.Species), known);
    }

    public static IReadOnlyDictionary<long, GoesBy> WorkOut(
        IEnumerable<long> nodes, IEnumerable<LineageEdgeRow> edges, IEnumerable<NameClaimRow> claims, IReadOnlyDictionary<long, string?> lotSpecies, IReadOnlyDictionary<long, GoesBy>? known = null)
    {
        var parents = edges.ToLookup(edge => edge.ChildId);
        var own = claims.Where(claim => !claim.IsWithdrawn).ToLookup(claim => claim.NodeId);
        var names = new Dictionary<long, GoesBy>();
        // A parent's number is below its child's, so parents are named first.
        foreach (var node in nodes.Order())
        {
            if (known?.GetValueOrDefault(node) is { } name)
            {
                names[node] = name;
                continue;
            }

            var strongest = own[node].OrderByDescending(claim => claim.Grounds).ThenByDescending(claim => claim.Id).ToArray();
            var variety = strongest.FirstOrDefault(claim => claim.Variety is not null)?.Variety;
            var species = strongest.FirstOrDefault(claim => claim.Species is not null)?.Species ?? lotSpecies.GetValueOrDefault(node);
            var above = parents[node].OrderByDescending(edge => edge.Share).Select(edge => names.GetValueOrDefault(edge.ParentId, GoesBy.NotKnown)).ToArray();
            var othersToo = variety is null && above.Select(of => of.Variety).Distinct(StringComparer.OrdinalIgnoreCase).Count() > 1;
            names[node] = new(
                variety ?? above.FirstOrDefault(of => of.Variety is not null)?.Variety,
                species ?? above.FirstOrDefault(of => of.Species is not null)?.Species,
                othersToo || (variety is null && above.Any(of => of.OthersToo)));
        }
        return names;
    }
}
