using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Looks;

/// <summary>The best few looks, best first; of equal ones the earlier in the guide.</summary>
internal readonly struct Shortlist(int most)
{
    private readonly List<(CompiledTrait Trait, SecondLook? Second, double Bits, double PerEffort)> _looks = new(most + 1);

    public int Count => _looks.Count;

    public (CompiledTrait Trait, SecondLook? Second, double Bits, double PerEffort) this[int i] => _looks[i];

    public void Offer(CompiledTrait trait, SecondLook? second, double bits, double perEffort)
    {
        var at = _looks.Count;
        while (at > 0 && _looks[at - 1].PerEffort < perEffort) at--;
        if (at >= most) return;
        _looks.Insert(at, (trait, second, bits, perEffort));
        if (_looks.Count > most) _looks.RemoveAt(most);
    }

    /// <summary>Puts the first looks, as many as there are values, in order of falling value; equal ones keep their order.</summary>
    public void Reorder(double[] values)
    {
        var looks = _looks;
        var order = Enumerable.Range(0, values.Length).OrderByDescending(i => values[i]).Select(i => looks[i]).ToList();
        for (var i = 0; i < order.Count; i++) _looks[i] = order[i];
    }
}
