namespace LibraryDesk.Lineage.Keeping;

/// <summary>Figures from daily counts of a germination test. Names and formulas as compiled by Ranal &amp; Santana 2006, Revista Brasileira de Botanica 29:1-11.</summary>
public sealed class GerminationCourse
{
    private readonly int[] _counts;

    /// <param name="newEachDay">Seeds that came up on day 1, 2, 3 ...</param>
    /// <param name="sown">Seeds sown; no fewer than came up.</param>
    public GerminationCourse(IEnumerable<int> newEachDay, int sown)
    {
        ArgumentNullException.ThrowIfNull(newEachDay);
        _counts = newEachDay.ToArray();
        if (_counts.Any(count => count < 0)) throw new ArgumentException("A count is never below nothing.", nameof(newEachDay));
        Germinated = _counts.Sum();
        ArgumentOutOfRangeException.ThrowIfLessThan(sown, Math.Max(1, Germinated));
        Sown = sown;
    }

    /// <summary>Seeds sown.</summary>
    public int Sown { get; }

    /// <summary>Seeds that came up in all.</summary>
    public int Germinated { get; }

    /// <summary>Germination in per cent.</summary>
    public double Percent => 100.0 * Germinated / Sown;

    /// <summary>The day of the first seed; null when none came up.</summary>
    public int? FirstDay => Germinated == 0 ? null : Array.FindIndex(_counts, count => count > 0) + 1;

    /// <summary>The day of the last seed; null when none came up.</summary>
    public int? LastDay => Germinated == 0 ? null : Array.FindLastIndex(_counts, count => count > 0) + 1;

    /// <summary>Mean germination time in days: sum of n t / sum of n; null when none came up.</summary>
    public double? MeanTime => Germinated == 0 ? null : Sum((count, day) => count * day) / Germinated;

    /// <summary>Variance of the germination time, in days squared; null for fewer than two seeds.</summary>
    public double? Variance => Germinated < 2 ? null : Sum((count, day) => count * Math.Pow(day - MeanTime!.Value, 2)) / (Germinated - 1);

    /// <summary>Speed of germination (Maguire 1962): sum of n / t.</summary>
    public double Speed => Sum((count, day) => (double)count / day);

    /// <summary>Synchrony Z (Primack 1985; Ranal &amp; Santana 2006): 1 when all come up on one day; null for fewer than two seeds.</summary>
    public double? Synchrony => Germinated < 2 ? null : Sum((count, _) => count * (count - 1) / 2.0) / (Germinated * (Germinated - 1) / 2.0);

    /// <summary>Uncertainty U in bits (Labouriau &amp; Valadares 1976): 0 when all come up on one day; null when none came up.</summary>
    public double? Uncertainty => Germinated == 0 ? null : -Sum((count, _) => count == 0 ? 0 : (double)count / Germinated * Math.Log2((double)count / Germinated));

    /// <summary>Days until half of the seeds that came up had come up, between the days (Coolbear et al. 1984, half of N + 1); null when none came up.</summary>
    public double? HalfTime => Half((Germinated + 1) / 2.0);

    /// <summary>The same after Farooq et al. 2005, half of N.</summary>
    public double? HalfTimeFarooq => Half(Germinated / 2.0);

    private double? Half(double target)
    {
        var before = 0;
        for (var day = 0; day < _counts.Length; day++)
        {
            var after = before + _counts[day];
            if (Germinated > 0 && after >= target) return day + ((target - before) / _counts[day]);
            before = after;
        }

        return null;
    }

    private double Sum(Func<int, int, double> term) => _counts.Select((count, at) => term(count, at + 1)).Sum();
}
