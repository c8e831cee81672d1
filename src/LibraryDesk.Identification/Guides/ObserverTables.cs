namespace LibraryDesk.Identification.Guides;

/// <summary>Confusion between the state that was there and the state that is named: rows are true states and sum to 1.</summary>
internal static class ObserverTables
{
    /// <summary>How much of the error goes to states people swap easily, where the trait names such groups.</summary>
    private const double ShareOfConfused = 0.8;

    /// <summary>Extra confusion inside such a group, at full sureness: shades are named differently by careful people.</summary>
    private const double ConfusedExtra = 0.25;

    /// <summary>Each step further along an ordered trait is mistaken this many times less often.</summary>
    private const double StepFactor = 5;

    public static double[] ForStates(Trait trait, double reliability)
    {
        var k = trait.States.Count;
        var table = new double[k * k];
        var groups = Groups(trait);
        for (var s = 0; s < k; s++)
        {
            var r = groups[s].Count > 0 && reliability < 1 ? reliability * (1 - ConfusedExtra) : reliability;
            var error = (1 - r) / Weight(trait, groups, s, k);
            for (var y = 0; y < k; y++) table[(s * k) + y] = y == s ? r : error * Spread(trait, groups, s, y, k);
        }

        return table;
    }

    private static List<int>[] Groups(Trait trait)
    {
        var groups = new List<int>[trait.States.Count];
        for (var s = 0; s < groups.Length; s++)
        {
            var id = trait.States[s].Id;
            groups[s] = [.. trait.Confused.Where(g => g.Contains(id)).SelectMany(g => g).Where(o => o != id)
                .Select(o => trait.States.ToList().FindIndex(x => x.Id == o)).Where(i => i >= 0).Distinct()];
        }

        return groups;
    }

    private static double Weight(Trait trait, List<int>[] groups, int s, int k)
    {
        var sum = 0.0;
        for (var y = 0; y < k; y++)
        {
            if (y != s) sum += Spread(trait, groups, s, y, k);
        }

        return sum;
    }

    private static double Spread(Trait trait, List<int>[] groups, int s, int y, int k)
    {
        if (trait.Kind == TraitKind.Ordered) return Math.Pow(StepFactor, 1 - Math.Abs(s - y));
        var near = groups[s].Count;
        if (near == 0) return 1.0 / (k - 1);
        var far = k - 1 - near;
        if (far == 0) return 1.0 / near;
        return groups[s].Contains(y) ? ShareOfConfused / near : (1 - ShareOfConfused) / far;
    }
}
