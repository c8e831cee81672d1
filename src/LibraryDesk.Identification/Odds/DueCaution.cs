using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>A caution that must stand before the odds: the plant could be one that harms.</summary>
/// <param name="Candidate">The look-alike it is about, with its odds.</param>
public sealed record DueCaution(Caution Caution, RankedCandidate Candidate)
{
    /// <summary>Odds from which a look-alike's cautions come first: 1 in 20.</summary>
    public const double From = 1.0 / 20;

    /// <summary>The cautions of every look-alike at <see cref="From"/> or above, the likeliest look-alike first, each caution once.</summary>
    public static IReadOnlyList<DueCaution> Of(CropGuide guide, Ranking ranking)
    {
        List<DueCaution>? due = null;
        for (var i = 0; i < ranking.Candidates.Count; i++)
        {
            // In order of odds: all that follow are below it too.
            var candidate = ranking.Candidates[i];
            if (candidate.Probability < From) break;
            if (candidate.Kind != CandidateKind.LookAlike) continue;
            foreach (var id in guide.FindCandidate(candidate.Id)!.Cautions)
            {
                if (due?.Exists(d => d.Caution.Id == id) is true) continue;
                (due ??= []).Add(new DueCaution(guide.Cautions.First(c => c.Id == id), candidate));
            }
        }

        return due ?? [];
    }
}
