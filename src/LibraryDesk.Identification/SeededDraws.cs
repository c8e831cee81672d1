namespace LibraryDesk.Identification;

/// <summary>Uniform draws that are the same on every machine: SplitMix64 (Steele, Lea and Flood 2014).</summary>
internal struct SeededDraws(ulong seed)
{
    private ulong _state = seed;

    /// <summary>A number from 0 up to, not including, 1.</summary>
    public double Next()
    {
        _state += 0x9E3779B97F4A7C15UL;
        var z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }
}
