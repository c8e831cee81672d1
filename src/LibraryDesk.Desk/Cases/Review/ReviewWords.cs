using System.Globalization;
using LibraryDesk.Identification.Guides;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Names and numbers of the review desk in words.</summary>
public static class ReviewWords
{
    /// <summary>"Capsicum cf. annuum": the qualifier stands before the epithet (Bengtson 1988, Palaeontology 31: 223-227).</summary>
    public static string Name(CropGuide guide, NamedTaxon taxon)
    {
        ArgumentNullException.ThrowIfNull(guide);
        if (!taxon.Tells) return Say["Can't be told from these looks"];
        var name = guide.FindCandidate(taxon.Taxon)?.Name ?? taxon.Taxon;
        if (taxon.Qualifier.Length == 0) return name;
        var gap = name.IndexOf(' ', StringComparison.Ordinal);
        return gap < 0 ? $"{taxon.Qualifier} {name}" : $"{name[..gap]} {taxon.Qualifier}{name[gap..]}";
    }

    internal static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
