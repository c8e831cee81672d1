using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Tests.Laws;

/// <summary>Cases drawn at random over a guide: states, sets, measures, several people and looks, all sorts of sureness.</summary>
internal static class RandomCases
{
    public static List<Answer> Answers(CropGuide guide, int seed, int most = 8)
    {
        var random = new Random(seed);
        var answers = new List<Answer>();
        foreach (var trait in guide.Traits.OrderBy(_ => random.Next()).Take(random.Next(most + 1)))
        {
            var times = random.Next(4) == 0 ? 2 : 1;
            for (var i = 0; i < times; i++)
            {
                var answer = trait.Kind == TraitKind.Measured
                    ? Answer.Measured(trait.Id, Math.Exp(1 + (3 * random.NextDouble())))
                    : Answer.Of(trait.Id, [.. trait.States.OrderBy(_ => random.Next()).Take(1 + random.Next(2)).Select(s => s.Id)]);
                answers.Add(answer with { Sure = (Sureness)random.Next(3), Person = random.Next(2) == 0 ? $"p{i}" : "p", Look = $"look {i}" });
            }
        }

        return answers;
    }
}
