namespace LibraryDesk.Desk.Seeds.Ledger.Rebuild;

/// <summary>Walks the wanted rows and the standing rows of a table side by side, in the order of their keys, and takes down where they differ.</summary>
internal sealed class TableComparison(LibraryDbContext db, RebuildScratch scratch, int mostNamed, CancellationToken stop)
{
    private const int MostAtOnce = 500;
    private readonly List<string> _differences = [];

    public IReadOnlyList<string> Differences => _differences;

    public long DifferenceCount { get; private set; }

    public async Task CompareAsync(DerivedTable table)
    {
        var name = db.Model.FindEntityType(table.Row)!.GetTableName()!;
        using var wanted = scratch.Wanted(table).GetEnumerator();
        await using var standing = table.StandingAsync(db, stop).GetAsyncEnumerator(stop);
        var hasWanted = wanted.MoveNext();
        var hasStanding = await standing.MoveNextAsync();
        while (hasWanted || hasStanding)
        {
            var order = !hasStanding ? -1 : !hasWanted ? 1 : wanted.Current.Key.CompareTo(standing.Current.Key);
            if (order < 0) Note(table, EntityState.Added, wanted.Current.Text, $"{name} {wanted.Current.Key}: missing, the ledger says {wanted.Current.Text}");
            else if (order > 0) Note(table, EntityState.Deleted, standing.Current.Text, $"{name} {standing.Current.Key}: left over, stands as {standing.Current.Text}");
            else if (wanted.Current.Text != standing.Current.Text)
                Note(table, EntityState.Modified, wanted.Current.Text, $"{name} {wanted.Current.Key}: stands as {standing.Current.Text}, the ledger says {wanted.Current.Text}");
            if (order <= 0) hasWanted = wanted.MoveNext();
            if (order >= 0) hasStanding = await standing.MoveNextAsync();
        }
    }

    /// <summary>Does to the tables what was taken down, a few hundred rows at a time. What is left over goes first: its code may be wanted by another row.</summary>
    public async Task RepairAsync()
    {
        foreach (var deletes in (bool[])[true, false])
        {
            foreach (var some in scratch.Repairs().Where(repair => repair.Act == EntityState.Deleted == deletes).Chunk(MostAtOnce))
            {
                foreach (var (row, act) in some) db.Entry(row).State = act;
                await db.SaveChangesAsync(stop);
                db.ChangeTracker.Clear();
            }
        }
    }

    private void Note(DerivedTable table, EntityState act, string text, string what)
    {
        DifferenceCount++;
        scratch.Note(table, act, text);
        if (_differences.Count < mostNamed) _differences.Add(what);
    }
}
