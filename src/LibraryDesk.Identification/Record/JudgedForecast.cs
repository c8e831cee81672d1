namespace LibraryDesk.Identification.Record;

/// <summary>Odds shown for a case whose truth became known.</summary>
/// <param name="Probabilities">Probability of each candidate; they sum to 1.</param>
/// <param name="Truth">Index of the candidate that it was.</param>
public sealed record JudgedForecast(IReadOnlyList<double> Probabilities, int Truth)
{
    /// <summary>Index of the likeliest candidate; of equals the first.</summary>
    public int First
    {
        get
        {
            var first = 0;
            for (var i = 1; i < Probabilities.Count; i++)
            {
                if (Probabilities[i] > Probabilities[first]) first = i;
            }

            return first;
        }
    }
}
