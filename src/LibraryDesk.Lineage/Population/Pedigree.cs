namespace LibraryDesk.Lineage.Population;

/// <summary>One plant or animal with its two parents; the same parent twice is a selfing.</summary>
/// <param name="Id">Its name, once in a pedigree.</param>
/// <param name="Mother">Null when not known: a founder.</param>
/// <param name="Father">Null when not known: a founder.</param>
public sealed record PedigreeRow(string Id, string? Mother, string? Father);

/// <summary>
/// A pedigree of single plants, as hand-pollination keeps. Coancestry by the tabular method (Emik &amp; Terrill 1949, cited from memory);
/// founder contributions and gene diversity by Lacy 1989, Zoo Biology 8:111-123.
/// An unknown parent is a founder unrelated to all others.
/// </summary>
public sealed class Pedigree
{
    private readonly List<PedigreeRow> _rows;
    private readonly Dictionary<string, int> _place = new(StringComparer.Ordinal);
    private readonly double[][] _coancestry;

    /// <param name="rows">In any order; parents that have no row of their own are founders.</param>
    /// <exception cref="ArgumentException">An id stands twice, or somebody is their own ancestor.</exception>
    public Pedigree(IEnumerable<PedigreeRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        _rows = ParentsFirst(rows.ToArray());
        for (var at = 0; at < _rows.Count; at++) _place.Add(_rows[at].Id, at);
        _coancestry = new double[_rows.Count][];
        for (var at = 0; at < _rows.Count; at++)
        {
            var row = _coancestry[at] = new double[at + 1];
            var (mother, father) = (Parent(_rows[at].Mother), Parent(_rows[at].Father));
            for (var other = 0; other < at; other++) row[other] = (Between(mother, other) + Between(father, other)) / 2;
            row[at] = (1 + Between(mother, father)) / 2;
        }
    }

    /// <summary>All ids, parents before children.</summary>
    public IEnumerable<string> Ids => _rows.Select(row => row.Id);

    /// <summary>Coancestry: the chance that an allele drawn from one and an allele drawn from the other are copies of one ancestor's.</summary>
    public double Coancestry(string one, string other) => Between(_place[one], _place[other]);

    /// <summary>Inbreeding coefficient F: the coancestry of the parents.</summary>
    public double Inbreeding(string id) => (2 * _coancestry[_place[id]][_place[id]]) - 1;

    /// <summary>The part of a group's genes that goes back to each founder. Parts sum to 1; an unknown parent of a plant with one known parent is a founder of its own, named after its child.</summary>
    public IReadOnlyDictionary<string, double> FounderContributions(IReadOnlyCollection<string> group)
    {
        ArgumentNullException.ThrowIfNull(group);
        ArgumentOutOfRangeException.ThrowIfZero(group.Count, nameof(group));
        var parts = new double[_rows.Count];
        foreach (var id in group) parts[_place[id]] += 1.0 / group.Count;
        var founders = new Dictionary<string, double>(StringComparer.Ordinal);
        for (var at = _rows.Count - 1; at >= 0; at--)
        {
            if (parts[at] == 0) continue;
            var row = _rows[at];
            if (row.Mother is null && row.Father is null)
            {
                founders[row.Id] = parts[at];
                continue;
            }

            foreach (var parent in new[] { row.Mother, row.Father })
            {
                if (parent is null) founders[$"unknown parent of {row.Id}"] = founders.GetValueOrDefault($"unknown parent of {row.Id}") + (parts[at] / 2);
                else parts[_place[parent]] += parts[at] / 2;
            }
        }

        return founders;
    }

    /// <summary>Mean coancestry of a group, each with itself included.</summary>
    public double MeanCoancestry(IReadOnlyCollection<string> group)
    {
        ArgumentNullException.ThrowIfNull(group);
        ArgumentOutOfRangeException.ThrowIfZero(group.Count, nameof(group));
        var places = group.Select(id => _place[id]).ToArray();
        return places.Sum(one => places.Sum(other => Between(one, other))) / ((double)places.Length * places.Length);
    }

    private int Parent(string? id) => id is null ? -1 : _place[id];

    private double Between(int one, int other) => one < 0 || other < 0 ? 0 : one >= other ? _coancestry[one][other] : _coancestry[other][one];

    private static List<PedigreeRow> ParentsFirst(PedigreeRow[] rows)
    {
        var byId = rows.ToDictionary(row => row.Id, StringComparer.Ordinal);
        var done = new List<PedigreeRow>();
        var state = new Dictionary<string, bool>(StringComparer.Ordinal);
        var open = new Stack<string>();
        foreach (var start in rows)
        {
            open.Push(start.Id);
            while (open.TryPeek(out var id))
            {
                var row = byId.GetValueOrDefault(id) ?? new PedigreeRow(id, null, null);
                if (state.TryGetValue(id, out var isDone) && isDone)
                {
                    open.Pop();
                    continue;
                }

                var waiting = new[] { row.Mother, row.Father }.OfType<string>().Where(parent => !state.GetValueOrDefault(parent)).ToArray();
                if (waiting.Length == 0)
                {
                    state[id] = true;
                    done.Add(row);
                    open.Pop();
                    continue;
                }

                if (!state.TryAdd(id, false)) throw new ArgumentException($"{id} is its own ancestor.", nameof(rows));
                foreach (var parent in waiting)
                {
                    if (state.ContainsKey(parent)) throw new ArgumentException($"{parent} is its own ancestor.", nameof(rows));
                    open.Push(parent);
                }
            }
        }

        return done;
    }
}
