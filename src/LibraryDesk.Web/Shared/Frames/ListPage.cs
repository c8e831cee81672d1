namespace LibraryDesk.Web.Shared.Frames;

/// <summary>One page of a list that is read whole; <see cref="Pager"/> leads to the others.</summary>
/// <param name="All">The list.</param>
/// <param name="Asked">The page asked for, from 1; out of range counts as the nearest, null as the first.</param>
public sealed record ListPage<T>(IReadOnlyList<T> All, int? Asked)
{
    /// <summary>Rows of a page.</summary>
    public const int Rows = 25;

    /// <summary>How many pages there are.</summary>
    public int Count => (All.Count + Rows - 1) / Rows;

    /// <summary>The page shown, from 1.</summary>
    public int At => Math.Clamp(Asked ?? 1, 1, Math.Max(1, Count));

    /// <summary>Its rows.</summary>
    public IReadOnlyList<T> Shown => [.. All.Skip((At - 1) * Rows).Take(Rows)];
}
