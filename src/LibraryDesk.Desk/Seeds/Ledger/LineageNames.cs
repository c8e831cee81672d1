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
        var all = edges.Select(edge => edge.ParentId).Concat(edges.Select(edge => edge.ChildId)).Concat(nodes).Distinct().ToArray();
        var claims = await db.Set<NameClaimRow>().AsNoTracking().Where(claim => all.Contains(claim.NodeId) && !claim.IsWithdrawn).OrderBy(claim => claim.Id).ToListAsync(stop);
        var lots = await db.Set<LotRow>().Where(lot => all.Contains(lot.Id) && lot.Species != null).Select(lot => new { lot.Id, lot.Species }).ToListAsync(stop);
        return WorkOut(all, edges, claims, lots.ToDictionary(lot => lot.Id, lot => lot.Species));
    }

    public static IReadOnlyDictionary<long, GoesBy> WorkOut(
        IEnumerable<long> nodes, IEnumerable<LineageEdgeRow> edges, IEnumerable<NameClaimRow> claims, IReadOnlyDictionary<long, string?> lotSpecies)
    {
        var parents = edges.ToLookup(edge => edge.ChildId);
        var own = claims.Where(claim => !claim.IsWithdrawn).ToLookup(claim => claim.NodeId);
        var names = new Dictionary<long, GoesBy>();
        // A parent's number is below its child's, so parents are named first.
        foreach (var node in nodes.Order())
        {
            var strongest = own[node].OrderByDescending(claim => claim.Grounds).ThenByDescending(claim => claim.Id).ToArray();
            var variety = strongest.FirstOrDefault(claim => claim.Variety is not null)?.Variety;
            var species = strongest.FirstOrDefault(claim => claim.Species is not null)?.Species ?? lotSpecies.GetValueOrDefault(node);
            var above = parents[node].OrderByDescending(edge => edge.Share).Select(edge => names.GetValueOrDefault(edge.ParentId, GoesBy.NotKnown)).ToArray();
            var othersToo = variety is null && above.Select(name => name.Variety).Distinct(StringComparer.OrdinalIgnoreCase).Count() > 1;
            names[node] = new(
                variety ?? above.FirstOrDefault(name => name.Variety is not null)?.Variety,
                species ?? above.FirstOrDefault(name => name.Species is not null)?.Species,
                othersToo || (variety is null && above.Any(name => name.OthersToo)));
        }
        return names;
    }
}
