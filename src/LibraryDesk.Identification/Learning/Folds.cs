namespace LibraryDesk.Identification.Learning;

/// <summary>Parts of a set of labelled plants for cross-validation.</summary>
public static class Folds
{
    /// <summary>The fold of each plant, 0-based: every label is spread evenly, in an order drawn from the seed.</summary>
    public static int[] Stratified(IReadOnlyList<string> labels, int count, ulong seed)
    {
        var folds = new int[labels.Count];
        var random = new SeededDraws(seed);
        var next = 0;
        foreach (var label in labels.Distinct().Order(StringComparer.Ordinal))
        {
            var members = Enumerable.Range(0, labels.Count).Where(i => labels[i] == label).ToArray();
            for (var i = members.Length - 1; i > 0; i--)
            {
                var j = (int)(random.Next() * (i + 1));
                (members[i], members[j]) = (members[j], members[i]);
            }

            // Going on where the last label stopped keeps the folds of one size.
            foreach (var member in members) folds[member] = next++ % count;
        }

        return folds;
    }
}
