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

    /// <summary>Lots that go by a name: those it was claimed for, and everything made of what it was claimed for.</summary>
    /// <param name="db">The library.</param>
    /// <param name="pattern">For LIKE, in lower case.</param>
    public static IQueryable<LotRow> LotsNamed(LibraryDbContext db, string pattern) => db.Set<LotRow>().FromSql(
        $"""
        SELECT l.* FROM lots l WHERE l.id IN (
            WITH RECURSIVE down(id) AS (
                SELECT c.node_id FROM name_claims c WHERE NOT c.is_withdrawn AND (lower(c.variety) LIKE {pattern} ESCAPE '!' OR lower(c.species) LIKE {pattern} ESCAPE '!')
                UNION SELECT e.child_id FROM lineage_edges e JOIN down ON e.parent_id = down.id)
            SELECT id FROM down)
        """);

    /// <summary>All edges upstream of any of some nodes.</summary>
    public static IQueryable<LineageEdgeRow> EdgesAboveAny(LibraryDbContext db, IReadOnlyCollection<long> nodes)
    {
        if (nodes.Count == 0) return db.Set<LineageEdgeRow>().Where(edge => false);
        var places = string.Join(", ", Enumerable.Range(0, nodes.Count).Select(place => string.Create(CultureInfo.InvariantCulture, $"{{{place}}}")));
        return db.Set<LineageEdgeRow>().FromSql(FormattableStringFactory.Create(
            $"""
            SELECT x.* FROM lineage_edges x WHERE x.child_id IN (
                WITH RECURSIVE up(id) AS (
                    SELECT e.child_id FROM lineage_edges e WHERE e.child_id IN ({places})
                    UNION SELECT e.parent_id FROM lineage_edges e JOIN up ON e.child_id = up.id)
                SELECT id FROM up)
            """,
            [.. nodes.Select(node => (object)node)]));
    }
}
