using System.Globalization;
using System.Runtime.CompilerServices;
using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Walks along the lineage inside the database: one query however deep it goes. The same text runs on both databases.</summary>
internal static class LineageSql
{
    /// <summary>Holds on a node and everything upstream of it.</summary>
    public static IQueryable<HoldRow> HoldsAbove(LibraryDbContext db, long node) => db.Set<HoldRow>().FromSql(
        $"""
        SELECT h.* FROM holds h WHERE h.node_id IN (
            WITH RECURSIVE up(id) AS (
                SELECT CAST({node} AS bigint)
                UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id)
            SELECT id FROM up)
        """);

    /// <summary>All edges upstream of a node.</summary>
    public static IQueryable<LineageEdgeRow> EdgesAbove(LibraryDbContext db, long node) => db.Set<LineageEdgeRow>().FromSql(
        $"""
        SELECT x.* FROM lineage_edges x WHERE x.child_id IN (
            WITH RECURSIVE up(id) AS (
                SELECT CAST({node} AS bigint)
                UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id)
            SELECT id FROM up)
        """);

    /// <summary>All edges downstream of a node.</summary>
    public static IQueryable<LineageEdgeRow> EdgesBelow(LibraryDbContext db, long node) => db.Set<LineageEdgeRow>().FromSql(
        $"""
        SELECT x.* FROM lineage_edges x WHERE x.parent_id IN (
            WITH RECURSIVE down(id) AS (
                SELECT CAST({node} AS bigint)
                UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
            SELECT id FROM down)
        """);

    /// <summary>All packets downstream of a node, and the node itself where it is one.</summary>
    public static IQueryable<PacketRow> PacketsBelow(LibraryDbContext db, long node) => db.Set<PacketRow>().FromSql(
        $"""
        SELECT p.* FROM packets p WHERE p.id IN (
            WITH RECURSIVE down(id) AS (
                SELECT CAST({node} AS bigint)
                UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
            SELECT id FROM down)
        """);

    /// <summary>All edges upstream of any of some nodes.</summary>
    public static IQueryable<LineageEdgeRow> EdgesAboveAny(LibraryDbContext db, IReadOnlyCollection<long> nodes) => OfAny<LineageEdgeRow>(db, nodes, those =>
        $"""
        SELECT x.* FROM lineage_edges x WHERE x.child_id IN (
            WITH RECURSIVE up(id) AS (
                SELECT column1 FROM {those}
                UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id)
            SELECT id FROM up)
        """);

    /// <summary>All edges upstream of any of some nodes, up to the nearest lots that stand in the search tables already.</summary>
    public static IQueryable<LineageEdgeRow> EdgesAboveToSearched(LibraryDbContext db, IReadOnlyCollection<long> nodes) => OfAny<LineageEdgeRow>(db, nodes, those =>
        $"""
        SELECT x.* FROM lineage_edges x WHERE x.child_id IN (
            WITH RECURSIVE up(id) AS (
                SELECT column1 FROM {those}
                UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id
                    WHERE NOT EXISTS (SELECT 1 FROM search_lots s WHERE s.lot_id = e.parent_id))
            SELECT id FROM up)
        """);

    /// <summary>All edges downstream of any of some nodes.</summary>
    public static IQueryable<LineageEdgeRow> EdgesBelowAny(LibraryDbContext db, IReadOnlyCollection<long> nodes) => OfAny<LineageEdgeRow>(db, nodes, those =>
        $"""
        SELECT x.* FROM lineage_edges x WHERE x.parent_id IN (
            WITH RECURSIVE down(id) AS (
                SELECT column1 FROM {those}
                UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
            SELECT id FROM down)
        """);

    /// <summary>Holds that keep back seed made of any of some nodes: on the nodes, on what is downstream, and on all that has gone into that.</summary>
    public static IQueryable<HoldRow> HoldsOnSeedOfAny(LibraryDbContext db, IReadOnlyCollection<long> nodes) => OfAny<HoldRow>(db, nodes, those =>
        $"""
        SELECT h.* FROM holds h WHERE h.node_id IN (
            WITH RECURSIVE down(id) AS (
                SELECT column1 FROM {those}
                UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id),
            up(id) AS (
                SELECT id FROM down
                UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id)
            SELECT id FROM up)
        """);

    /// <summary>All packets downstream of any of some nodes, and those of the nodes that are packets.</summary>
    public static IQueryable<PacketRow> PacketsBelowAny(LibraryDbContext db, IReadOnlyCollection<long> nodes) => OfAny<PacketRow>(db, nodes, those =>
        $"""
        SELECT p.* FROM packets p WHERE p.id IN (
            WITH RECURSIVE down(id) AS (
                SELECT column1 FROM {those}
                UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
            SELECT id FROM down)
        """);

    private static IQueryable<TRow> OfAny<TRow>(LibraryDbContext db, IReadOnlyCollection<long> nodes, Func<string, string> sql)
        where TRow : class
    {
        if (nodes.Count == 0) return db.Set<TRow>().Where(_ => false);
        var those = string.Join(", ", Enumerable.Range(0, nodes.Count).Select(place => string.Create(CultureInfo.InvariantCulture, $"({{{place}}})")));
        return db.Set<TRow>().FromSql(FormattableStringFactory.Create(sql($"(VALUES {those}) AS asked"), [.. nodes.Select(node => (object)node)]));
    }
}
