using System.Collections;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>The forms of a ranking, put in order when somebody first asks: a batch that prints species only never does.</summary>
internal sealed class FormRanking : IReadOnlyList<RankedForm>
{
    private readonly CompiledGuide _guide;
    private readonly double[] _probabilities;
    private RankedForm[]? _ordered;

    /// <param name="probabilities">Posterior of every form, negative where the form is out of play; kept, not copied.</param>
    public FormRanking(CompiledGuide guide, double[] probabilities)
    {
        _guide = guide;
        _probabilities = probabilities;
    }

    public int Count => Ordered.Length;

    private RankedForm[] Ordered => _ordered ??= From(0);

    public RankedForm this[int index] => Ordered[index];

    public IEnumerator<RankedForm> GetEnumerator() => ((IEnumerable<RankedForm>)Ordered).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The forms of at least this probability, likeliest first.</summary>
    public RankedForm[] From(double least)
    {
        var order = new int[_guide.Forms.Length];
        var keys = new double[order.Length];
        var count = 0;
        for (var f = 0; f < order.Length; f++)
        {
            if (!(_probabilities[f] >= least)) continue;
            keys[count] = -_probabilities[f];
            order[count++] = f;
        }

        Ranker.Order(keys.AsSpan(0, count), order.AsSpan(0, count), f => _guide.Forms[f].Key);
        var forms = new RankedForm[count];
        for (var i = 0; i < count; i++)
        {
            var form = _guide.Forms[order[i]];
            forms[i] = new RankedForm(_guide.Guide.Candidates[form.Candidate].Id, form.Form?.Id, form.Name, -keys[i]);
        }

        return forms;
    }
}
