namespace LibraryDesk.Photos;

/// <summary>Why a photo was not taken.</summary>
/// <param name="Code">Stable and tested.</param>
/// <param name="Words">The rule and the way on, in English, its values apart so that another language can place them.</param>
public sealed record PhotoRefusal(string Code, FormattableString Words)
{
    /// <summary>The rule and the way on, in English.</summary>
    public string Message => FormattableString.Invariant(Words);
}
