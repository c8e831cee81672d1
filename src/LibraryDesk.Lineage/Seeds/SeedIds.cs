namespace LibraryDesk.Lineage.Seeds;

/// <summary>Hands out the next numbers of the one rising series. The last number stands beside the chain head and is taken under its lock.</summary>
public sealed class SeedIds
{
    /// <param name="last">The last number handed out; 0 for an empty library.</param>
    public SeedIds(long last)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(last);
        Last = last;
    }

    /// <summary>The last number handed out: store it with the chain head.</summary>
    public long Last { get; private set; }

    /// <summary>The next number, as the kind of id that is wanted.</summary>
    public T Next<T>()
        where T : struct, ISeedId<T> => T.From(++Last);
}
