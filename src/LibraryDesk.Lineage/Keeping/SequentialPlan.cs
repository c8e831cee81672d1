namespace LibraryDesk.Lineage.Keeping;

/// <summary>What a sequential germination test says so far.</summary>
public enum SequentialVerdict
{
    /// <summary>Sow another group.</summary>
    GoOn,

    /// <summary>It germinates well enough to be kept as it is.</summary>
    Keep,

    /// <summary>It germinates too poorly: regrow it.</summary>
    Regrow,

    /// <summary>As many seeds were sown as the plan allows, and it is still open: it lies close to the threshold.</summary>
    StillOpen,
}

/// <summary>The bounds after so many seeds.</summary>
/// <param name="Sown">Seeds sown so far.</param>
/// <param name="RegrowAtMost">Regrow when no more than so many germinated; null when that cannot be said yet.</param>
/// <param name="KeepAtLeast">Keep when at least so many germinated; null when that cannot be said yet.</param>
public sealed record SequentialStep(int Sown, int? RegrowAtMost, int? KeepAtLeast);

/// <summary>
/// A germination test in small groups that stops as soon as it can: the sequential probability ratio test (Wald 1945, Annals of
/// Mathematical Statistics 16:117-186) between "germinates at the threshold plus the margin" and "at the threshold less the margin". It spends fewer seeds
/// of a small lot than a test of fixed size.
/// </summary>
public sealed class SequentialPlan
{
    private readonly double _perGerminated;
    private readonly double _perDead;
    private readonly double _bound;

    /// <param name="threshold">The share below which to regrow, 0.1 to 0.98.</param>
    /// <param name="margin">Half the width of what is left open around the threshold; above 0.</param>
    /// <param name="risk">The chance of a wrong word at either edge of it, 0 to 0.5.</param>
    /// <param name="groupSize">Seeds sown at a time, 1 or more.</param>
    /// <param name="mostSeeds">Seeds after which the test ends, decided or not.</param>
    public SequentialPlan(double threshold, double margin = 0.05, double risk = 0.05, int groupSize = 25, int mostSeeds = 200)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(threshold, 0.1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(threshold, 0.98);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(margin);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(risk);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(risk, 0.5);
        ArgumentOutOfRangeException.ThrowIfLessThan(groupSize, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(mostSeeds, groupSize);
        (Threshold, Risk, GroupSize, MostSeeds) = (threshold, risk, groupSize, mostSeeds);
        Good = Math.Min(0.995, threshold + margin);
        Poor = Math.Max(0.005, threshold - margin);
        _perGerminated = Math.Log(Poor / Good);
        _perDead = Math.Log((1 - Poor) / (1 - Good));
        _bound = Math.Log((1 - risk) / risk);
        Steps = [.. Enumerable.Range(1, mostSeeds / groupSize).Select(group => Step(group * groupSize))];
    }

    /// <summary>The threshold it was made for.</summary>
    public double Threshold { get; }

    /// <summary>A lot at or above this is called poor with at most about <see cref="Risk"/>.</summary>
    public double Good { get; }

    /// <summary>A lot at or below this is called good with at most about <see cref="Risk"/>.</summary>
    public double Poor { get; }

    /// <summary>The chance of a wrong word at the edges.</summary>
    public double Risk { get; }

    /// <summary>Seeds sown at a time.</summary>
    public int GroupSize { get; }

    /// <summary>Seeds after which it ends.</summary>
    public int MostSeeds { get; }

    /// <summary>The bounds after each group.</summary>
    public IReadOnlyList<SequentialStep> Steps { get; }

    /// <summary>What to do after some seeds.</summary>
    public SequentialVerdict After(int sown, int germinated)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(sown);
        ArgumentOutOfRangeException.ThrowIfNegative(germinated);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(germinated, sown);
        var ratio = (germinated * _perGerminated) + ((sown - germinated) * _perDead);
        if (ratio >= _bound) return SequentialVerdict.Regrow;
        if (ratio <= -_bound) return SequentialVerdict.Keep;
        return sown >= MostSeeds ? SequentialVerdict.StillOpen : SequentialVerdict.GoOn;
    }

    private SequentialStep Step(int sown)
    {
        // ratio = sown x perDead - germinated x (perDead - perGerminated), and falls with every seed that germinates.
        var perSeed = _perDead - _perGerminated;
        var most = (int)Math.Floor(((sown * _perDead) - _bound) / perSeed);
        var least = (int)Math.Ceiling(((sown * _perDead) + _bound) / perSeed);
        return new(sown, most < 0 ? null : most, least > sown ? null : least);
    }
}
