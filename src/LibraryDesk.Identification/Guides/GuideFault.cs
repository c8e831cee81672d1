namespace LibraryDesk.Identification.Guides;

/// <summary>Something wrong in a guide file.</summary>
/// <param name="Line">Line of the file, 1-based.</param>
/// <param name="Trait">Trait concerned, or null.</param>
/// <param name="Words">What is wrong and what would be right, its values apart, so that another language can say it.</param>
public sealed record GuideFault(int Line, string? Trait, FormattableString Words)
{
    /// <summary><see cref="Words"/> in English.</summary>
    public string Reason => FormattableString.Invariant(Words);

    /// <inheritdoc/>
    public override string ToString() =>
        Trait is null ? $"line {Line}: {Reason}" : $"line {Line}, trait {Trait}: {Reason}";
}

/// <summary>A guide, or every fault found in the file.</summary>
/// <param name="Guide">The guide; null when there are faults.</param>
/// <param name="Faults">Faults in order of lines; empty when the guide is good.</param>
public sealed record GuideReading(CropGuide? Guide, IReadOnlyList<GuideFault> Faults);
