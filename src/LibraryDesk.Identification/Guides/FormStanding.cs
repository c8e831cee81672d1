namespace LibraryDesk.Identification.Guides;

/// <summary>Which traits set a form apart inside its species, and whether they are enough for it to stand.</summary>
/// <param name="Traits">Ids of the traits that a source was opened for and in which the form differs from its siblings taken together.</param>
/// <param name="Nearest">Id of the sibling it is most like.</param>
/// <param name="FromNearest">In how many of the sourced traits it differs from that one.</param>
public sealed record FormStanding(string Candidate, string Form, string Name, IReadOnlyList<string> Traits, string Nearest, int FromNearest)
{
    /// <summary>Sourced traits a form needs that set it apart from its siblings.</summary>
    public const int LeastTraits = 4;

    /// <summary>Sourced traits it needs that set it apart from the one it is most like; with one only, the two would be one form.</summary>
    public const int LeastFromNearest = 2;

    /// <summary>Total variation distance at which a form differs in a trait: one plant in five is another.</summary>
    private const double LeastDistance = 0.2;

    /// <summary>True where the form is set apart by enough traits.</summary>
    public bool Stands => Traits.Count >= LeastTraits && FromNearest >= LeastFromNearest;

    /// <summary>Every form of every species with several, in the order of the guide.</summary>
    public static IReadOnlyList<FormStanding> Of(CropGuide guide)
    {
        var compiled = CompiledGuide.Compile(guide with { FormSharing = 0 });
        var cells = new FormCells(guide);
        var standings = new List<FormStanding>();
        foreach (var c in compiled.ManyFormed)
        {
            for (var f = compiled.FirstForm[c]; f < compiled.FirstForm[c + 1]; f++)
            {
                standings.Add(Of(compiled, cells, c, f));
            }
        }

        return standings;
    }

    private static FormStanding Of(CompiledGuide guide, FormCells cells, int candidate, int f)
    {
        var form = guide.Forms[f];
        var sourced = guide.Traits.Where(t => IsSourced(cells.Of(form, t.Trait.Id))).ToList();
        var siblings = Enumerable.Range(guide.FirstForm[candidate], guide.FirstForm[candidate + 1] - guide.FirstForm[candidate]).Where(s => s != f).ToList();
        var (nearest, apart) = siblings.Select(s => (s, sourced.Count(t => Distance(guide, t, f, [s]) >= LeastDistance))).MinBy(x => x.Item2);
        return new FormStanding(
            guide.Guide.Candidates[candidate].Id,
            form.Form!.Id,
            form.Name,
            [.. sourced.Where(t => Distance(guide, t, f, siblings) >= LeastDistance).Select(t => t.Trait.Id)],
            guide.Forms[nearest].Form!.Id,
            apart);
    }

    private static bool IsSourced((List<Cell>? Cells, List<CountRow>? Counts) rows) =>
        rows.Counts is not null || (rows.Cells?.Any(c => !c.IsWeak && !c.IsLeftover) ?? false);

    /// <summary>Distance of a form from others weighed together.</summary>
    private static double Distance(CompiledGuide guide, CompiledTrait trait, int form, List<int> others)
    {
        var weight = others.Sum(o => guide.Forms[o].Weight);
        var distance = 0.0;
        for (var s = 0; s < trait.States; s++)
        {
            var row = trait.Theta.AsSpan(s * trait.Stride, trait.Stride);
            var mean = 0.0;
            foreach (var o in others) mean += guide.Forms[o].Weight / weight * row[o];
            distance += Math.Abs(row[form] - mean) / 2;
        }

        return distance;
    }
}
