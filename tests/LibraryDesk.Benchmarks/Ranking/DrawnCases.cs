using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Benchmarks.Ranking;

/// <summary>Plants drawn from a guide's own frequencies, with a slip in every twentieth answer.</summary>
internal static class DrawnCases
{
    public static List<Answer> Draw(CompiledGuide guide, Random random, int answers)
    {
        var species = guide.Guide.Candidates.Where(c => c.Kind == CandidateKind.Species).ToList();
        var candidate = species[random.Next(species.Count)];
        var form = candidate.Forms.Count == 0 ? null : candidate.Forms[random.Next(candidate.Forms.Count)].Id;
        var drawn = new List<Answer>();
        foreach (var trait in guide.Guide.Traits.OrderBy(_ => random.Next()))
        {
            if (drawn.Count == answers) break;
            if (Answer(guide, candidate.Id, form, trait, random) is { } answer) drawn.Add(answer);
        }

        return drawn;
    }

    private static Answer? Answer(CompiledGuide guide, string candidate, string? form, Trait trait, Random random)
    {
        if (trait.Kind == TraitKind.Measured)
        {
            if (guide.UsualRange(candidate, form, trait.Id) is not { } range) return null;
            return Identification.Answers.Answer.Measured(trait.Id, range.Low + (random.NextDouble() * (range.High - range.Low)));
        }

        if (guide.Frequencies(candidate, form, trait.Id) is not { } shares) return null;
        var u = random.NextDouble();
        var s = 0;
        while (s < shares.Count - 1 && (u -= shares[s]) > 0) s++;
        if (random.Next(20) == 0) s = random.Next(shares.Count);
        return Identification.Answers.Answer.Of(trait.Id, trait.States[s].Id);
    }
}
