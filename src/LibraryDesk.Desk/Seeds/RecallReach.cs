using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A lot that a recall takes in.</summary>
public sealed record ReachedLot(string Code, GoesBy Name, DateOnly MadeOn, Quantity Left);

/// <summary>A growing that a recall takes in.</summary>
/// <param name="FromCode">The packet or lot it was sown from.</param>
/// <param name="SownOn">The day of sowing, or the earliest it can be.</param>
/// <param name="SownLater">True when that day is only the earliest it can be.</param>
/// <param name="Plants">Plants that stood; null when not told.</param>
/// <param name="Grower">Who grew it; null when not known.</param>
/// <param name="CameBack">True when seed of it came back to the library.</param>
public sealed record ReachedGrowOut(string FromCode, DateOnly SownOn, bool SownLater, int? Plants, string? Grower, bool CameBack);

/// <summary>Another library that has seed of it, and must be told.</summary>
/// <param name="Entry">The entry of the ledger by which seed went there.</param>
/// <param name="Code">The lot or packet that was sent.</param>
/// <param name="ToldAt">When it was told; null while it was not.</param>
public sealed record ReachedLibrary(long Entry, string Library, string Code, DateOnly SentOn, DateTimeOffset? ToldAt = null);

/// <summary>What a recall takes in beside packets: lots, growings and other libraries, each once, oldest first.</summary>
public sealed record RecallReach(IReadOnlyList<ReachedLot> Lots, IReadOnlyList<ReachedGrowOut> GrowOuts, IReadOnlyList<ReachedLibrary> Libraries)
{
    /// <summary>Nothing but packets.</summary>
    public static RecallReach None { get; } = new([], [], []);

    internal static async Task<RecallReach> OfAsync(LibraryDbContext db, IReadOnlyCollection<long> starts, CancellationToken stop)
    {
        var nodes = starts.ToHashSet();
        nodes.UnionWith(await LineageSql.EdgesBelowAny(db, starts).AsNoTracking().Select(edge => edge.ChildId).ToListAsync(stop));
        var ids = nodes.ToArray();
        var lots = await db.Set<LotRow>().AsNoTracking().Where(row => ids.Contains(row.Id) && !row.IsVoid).OrderBy(row => row.Id).ToListAsync(stop);
        var growOuts = await db.Set<GrowOutRow>().AsNoTracking().Where(row => ids.Contains(row.Id) && !row.IsVoid).OrderBy(row => row.Id).ToListAsync(stop);
        var transfers = await db.Set<SeedTransferRow>().AsNoTracking().Where(row => ids.Contains(row.NodeId) && !row.IsVoid).OrderBy(row => row.Entry).ToListAsync(stop);
        var names = await LineageNames.OfAsync(db, [.. lots.Select(lot => lot.Id)], stop);
        var people = await PersonNames.OfAsync(db, growOuts.Select(growOut => growOut.GrowerId), stop);
        var codes = await CodesAsync(db, [.. growOuts.Select(growOut => growOut.FromId), .. transfers.Select(transfer => transfer.NodeId)], stop);
        return new(
            [.. lots.Select(lot => new ReachedLot(lot.Code, names[lot.Id], lot.MadeOn, new(lot.Stock, lot.Unit)))],
            [.. growOuts.Select(growOut => new ReachedGrowOut(
                codes.GetValueOrDefault(growOut.FromId, ""), growOut.SownOn, growOut.SownLater is true, growOut.PlantsGrown, growOut.GrowerId is { } grower ? people.GetValueOrDefault(grower) : null, growOut.Harvest is not null))],
            [.. transfers.Select(transfer => new ReachedLibrary(transfer.Entry, transfer.Library, codes.GetValueOrDefault(transfer.NodeId, ""), transfer.SentOn))]);
    }

    /// <summary>The codes of lots, packets and accessions by number.</summary>
    internal static async Task<Dictionary<long, string>> CodesAsync(LibraryDbContext db, IReadOnlyCollection<long> nodes, CancellationToken stop)
    {
        var codes = new Dictionary<long, string>();
        if (nodes.Count == 0) return codes;
        foreach (var lot in await db.Set<LotRow>().Where(row => nodes.Contains(row.Id)).Select(row => new { row.Id, row.Code }).ToListAsync(stop)) codes[lot.Id] = lot.Code;
        foreach (var packet in await db.Set<PacketRow>().Where(row => nodes.Contains(row.Id)).Select(row => new { row.Id, row.Code }).ToListAsync(stop)) codes[packet.Id] = packet.Code;
        foreach (var accession in await db.Set<AccessionRow>().Where(row => nodes.Contains(row.Id)).Select(row => new { row.Id, row.Code }).ToListAsync(stop)) codes[accession.Id] = accession.Code;
        return codes;
    }
}
