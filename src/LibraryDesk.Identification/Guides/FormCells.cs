namespace LibraryDesk.Identification.Guides;

/// <summary>Finds the rows of a guide that a form's frequencies are made of.</summary>
internal sealed class FormCells
{
    private readonly CropGuide _guide;
    private readonly Dictionary<(string Of, string Trait), List<Cell>> _cells;
    private readonly Dictionary<(string Of, string Trait), List<CountRow>> _counts;

    public FormCells(CropGuide guide)
    {
        _guide = guide;
        _cells = guide.Cells.GroupBy(c => (c.Of, c.Trait)).ToDictionary(g => g.Key, g => g.ToList());
        _counts = guide.Counts.GroupBy(c => (c.Of, c.Trait)).ToDictionary(g => g.Key, g => g.ToList());
    }

    /// <summary>A form's own cells, else the first of its fall-backs that has some, else its candidate's; counts of the form, else of the candidate.</summary>
    public (List<Cell>? Cells, List<CountRow>? Counts) Of(CompiledForm form, string trait)
    {
        var candidate = _guide.Candidates[form.Candidate].Id;
        var cells = _cells.GetValueOrDefault((form.Key, trait));
        foreach (var from in form.Form?.From ?? [])
        {
            if (cells is not null) break;
            cells = _cells.GetValueOrDefault((from, trait));
        }

        cells ??= _cells.GetValueOrDefault((candidate, trait));
        var counts = _counts.GetValueOrDefault((form.Key, trait)) ?? _counts.GetValueOrDefault((candidate, trait));
        return (cells, counts);
    }
}
