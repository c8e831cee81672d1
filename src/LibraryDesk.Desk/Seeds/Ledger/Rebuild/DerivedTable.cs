using System.Linq.Expressions;
using System.Runtime.CompilerServices;
using System.Text.Json;
using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger.Rebuild;

/// <summary>The key of a derived row, as two numbers: the second is 0 where the table has a single one.</summary>
internal readonly record struct RowKey(long First, long Second) : IComparable<RowKey>
{
    public int CompareTo(RowKey other) => First == other.First ? Second.CompareTo(other.Second) : First.CompareTo(other.First);

    public override string ToString() => Second == 0 ? FormattableString.Invariant($"{First}") : FormattableString.Invariant($"{First}/{Second}");
}

/// <summary>A table whose rows follow from the ledger.</summary>
/// <param name="number">Tells the tables apart in the scratch file.</param>
/// <param name="row">The row's type.</param>
internal abstract class DerivedTable(int number, Type row)
{
    /// <summary>Every derived table.</summary>
    public static IReadOnlyList<DerivedTable> All { get; } =
    [
        new DerivedTable<AccessionRow>(1, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<LotRow>(2, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<LineageEdgeRow>(3, row => new(row.ParentId, row.ChildId), row => row.ParentId, row => row.ChildId),
        new DerivedTable<PacketRow>(4, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<GrowOutRow>(5, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<LoanRow>(6, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<SeedRequestRow>(7, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<HoldRow>(8, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<NameClaimRow>(9, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<GerminationTestRow>(10, row => new(row.Id, 0), row => row.Id, null),
        new DerivedTable<SeedTransferRow>(11, row => new(row.Entry, 0), row => row.Entry, null),
        new DerivedTable<LedgerSubjectRow>(12, row => new(row.NodeId, row.Sequence), row => row.NodeId, row => row.Sequence),
        new DerivedTable<RecallRow>(13, row => new(row.HoldId, 0), row => row.HoldId, null),
        new DerivedTable<RecallPacketRow>(14, row => new(row.HoldId, row.PacketId), row => row.HoldId, row => row.PacketId),
        // The year stands first: the database orders letters in its own way, numbers in ours.
        new DerivedTable<CodeSeriesRow>(15, row => new(row.Year, row.Kind[0]), row => row.Year, row => row.Kind),
        new DerivedTable<LedgerHeadRow>(16, row => new(row.Id, 0), row => row.Id, null),
    ];

    private static readonly Dictionary<Type, DerivedTable> ByRow = All.ToDictionary(table => table.Row);

    public int Number => number;

    public Type Row => row;

    public static DerivedTable Of(Type row) => ByRow[row];

    public static string TextOf(object row) => JsonSerializer.Serialize(row, row.GetType());

    public object Read(string text) => JsonSerializer.Deserialize(text, row)!;

    public abstract RowKey KeyOf(object derived);

    /// <summary>The rows as they stand, one at a time, in the order of their keys.</summary>
    public abstract IAsyncEnumerable<(RowKey Key, string Text)> StandingAsync(LibraryDbContext db, CancellationToken stop);
}

/// <inheritdoc />
internal sealed class DerivedTable<TRow>(int number, Func<TRow, RowKey> key, Expression<Func<TRow, object>> first, Expression<Func<TRow, object>>? second)
    : DerivedTable(number, typeof(TRow))
    where TRow : class
{
    public override RowKey KeyOf(object derived) => key((TRow)derived);

    public override async IAsyncEnumerable<(RowKey Key, string Text)> StandingAsync(LibraryDbContext db, [EnumeratorCancellation] CancellationToken stop)
    {
        var ordered = db.Set<TRow>().AsNoTracking().OrderBy(first);
        if (second is not null) ordered = ordered.ThenBy(second);
        await foreach (var row in ordered.AsAsyncEnumerable().WithCancellation(stop)) yield return (key(row), TextOf(row));
    }
}
