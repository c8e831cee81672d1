using System.Collections;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>The forms of a ranking, put in order when somebody first asks: a batch that prints species only never does.</summary>
internal sealed class FormRanking : IReadOnlyList<RankedForm>
{
    private readonly CompiledGuide _guide;
    private readonly Lazy<RankedForm[]> _ordered;

    /// <param name="probabilities">Posterior of every form, negative where the form is out of play; kept, not copied.</param>
    public FormRanking(CompiledGuide guide, double[] probabilities)
    {
        _guide = guide;
        _ordered = new Lazy<RankedForm[]>(() => Order(probabilities));
    }

    public int Count => _ordered.Value.Length;

    public RankedForm this[int index] => _ordered.Value[index];

    public IEnumerator<RankedForm> GetEnumerator() => ((IEnumerable<RankedForm>)_ordered.Value).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private RankedForm[] Order(double[] probabilities)
    {
        var order = new int[_guide.Forms.Length];
        var keys = new double[order.Length];
        var count = 0;
        for (var f = 0; f < order.Length; f++)
        {
            if (probabilities[f] < 0) continue;
            keys[count] = -probabilities[f];
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
