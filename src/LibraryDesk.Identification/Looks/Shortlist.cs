using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Looks;

/// <summary>The best few looks, best first; of equal ones the earlier in the guide. Kept per thread and used again.</summary>
internal sealed class Shortlist
{
    private (CompiledTrait Trait, SecondLook? Second, double Bits, double PerEffort)[] _looks = [];
    private int _most;

    public int Count { get; private set; }

    public (CompiledTrait Trait, SecondLook? Second, double Bits, double PerEffort) this[int i] => _looks[i];

    /// <summary>Empties the list in the slot, making it where there is none.</summary>
    public static Shortlist Empty(ref Shortlist? slot, int most)
    {
        var list = slot ??= new Shortlist();
        if (list._looks.Length < most) list._looks = new (CompiledTrait, SecondLook?, double, double)[most];
        (list._most, list.Count) = (most, 0);
        return list;
    }

    public void Offer(CompiledTrait trait, SecondLook? second, double bits, double perEffort)
    {
        var at = Count;
        while (at > 0 && _looks[at - 1].PerEffort < perEffort) at--;
        if (at >= _most) return;
        if (Count < _most) Count++;
        for (var i = Count - 1; i > at; i--) _looks[i] = _looks[i - 1];
        _looks[at] = (trait, second, bits, perEffort);
    }

    /// <summary>Puts the first looks, as many as there are values, in order of falling value; equal ones keep their order.</summary>
    public void Reorder(Span<double> values)
    {
        for (var i = 1; i < values.Length; i++)
        {
            var (value, look) = (values[i], _looks[i]);
            var at = i;
            for (; at > 0 && values[at - 1] < value; at--) (values[at], _looks[at]) = (values[at - 1], _looks[at - 1]);
            (values[at], _looks[at]) = (value, look);
        }
    }

    /// <summary>Leaves out what stands after the first so many.</summary>
    public void Cut(int most) => Count = Math.Min(Count, most);
}
