using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Names;

namespace LibraryDesk.Web.Features.Rates;

/// <summary>What the rates of the reckoning mean and rest on, in the reader's language.</summary>
public static class RateWords
{
    /// <summary>One sentence.</summary>
    public static string Meaning(Rate rate)
    {
        ArgumentNullException.ThrowIfNull(rate);
        return RateTableText.Words[rate.Meaning];
    }

    /// <summary>Where the figure comes from, without a full stop.</summary>
    public static string Source(Rate rate)
    {
        ArgumentNullException.ThrowIfNull(rate);
        return RateTableText.Words[rate.Source];
    }
}

/// <summary>The texts of <see cref="RateTable.Standard"/> in other languages; its English, which is also what tests and the command line read, is the key.</summary>
internal static class RateTableText
{
    public static WordBook Words { get; } = new(typeof(RateTableText));
}
