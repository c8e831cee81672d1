namespace LibraryDesk.Lineage.Picture;

/// <summary>One line of words in the picture.</summary>
/// <param name="Text">The words.</param>
/// <param name="X">Where it is anchored, px from the left.</param>
/// <param name="Y">Its base line, px from the top.</param>
/// <param name="IsCentred">True when it is centred on <paramref name="X"/>; false when it begins there.</param>
/// <param name="IsSecond">True for the quieter line under a code.</param>
public sealed record PictureLine(string Text, double X, double Y, bool IsCentred, bool IsSecond)
{
    // Measured in the desk's own fonts, bold at 14.5 px and regular at 14 px: the widest mean of a dozen codes and notes.
    private const double FirstLetter = 9;
    private const double SecondLetter = 7.2;

    // Above and below the base line, px.
    private const double Rise = 12;
    private const double Drop = 4;

    /// <summary>Its left edge.</summary>
    public double Left => IsCentred ? X - (WidthOf(Text, IsSecond) / 2) : X;

    /// <summary>Its right edge.</summary>
    public double Right => Left + WidthOf(Text, IsSecond);

    /// <summary>Its upper edge.</summary>
    public double Top => Y - Rise;

    /// <summary>Its lower edge.</summary>
    public double Bottom => Y + Drop;

    /// <summary>How wide words come out, px.</summary>
    public static double WidthOf(string text, bool isSecond)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length * (isSecond ? SecondLetter : FirstLetter);
    }
}
