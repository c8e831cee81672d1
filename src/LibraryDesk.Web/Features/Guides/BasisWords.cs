using System.Text.RegularExpressions;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using static LibraryDesk.Web.Features.Guides.GuidesText;

namespace LibraryDesk.Web.Features.Guides;

/// <summary>How a source was read for a figure: in the reader's language where it is the desk's own way of saying it; a source's own words stay as they are.</summary>
public static partial class BasisWords
{
    private const string Frequency = "frequency word: ";
    private const string Memory = "from memory: ";

    /// <summary>The basis of a cell as the reader sees it.</summary>
    public static string Of(string basis)
    {
        ArgumentNullException.ThrowIfNull(basis);
        return Languages.Now == Languages.All[0] ? basis : InWords(basis);
    }

    private static string InWords(string basis) => basis switch
    {
        "from memory" => Say["from memory"],
        "stated, unqualified" => Say["stated, unqualified"],
        "range outside brackets" => Say["range outside brackets"],
        "bracketed high extreme of the range" => Say["bracketed high extreme of the range"],
        "bracketed low extreme of the range" => Say["bracketed low extreme of the range"],
        "listed as one alternative, no frequency word" => Say["listed as one alternative, no frequency word"],
        "part of a range of states joined by 'to'" => Say["part of a range of states joined by 'to'"],
        "range given; shared among the states it names" => Say["range given; shared among the states it names"],
        "excluded by the wording (another state is given as the only one)" => Say["excluded by the wording (another state is given as the only one)"],
        "stated in the key; species name inferred from the couplet" => Say["stated in the key; species name inferred from the couplet"],
        "not listed for this type, a gap in the source: pooled over the domesticated species that list it" =>
            Say["not listed for this type, a gap in the source: pooled over the domesticated species that list it"],
        "not named for this type; three parts in ten of the species row stand beside the type's own colours" =>
            Say["not named for this type; three parts in ten of the species row stand beside the type's own colours"],
        _ when Weighed().Match(basis) is { Success: true } weighed && Enum.TryParse<Word>(weighed.Groups["word"].Value, ignoreCase: true, out var word) => weighed.Groups["three"].Success
            ? Say[$"{Of(weighed.Groups["said"].Value)}; source: {GuideWords.HowOften(word)}, one part in three beside two pooled over the five domesticated species"]
            : Say[$"{Of(weighed.Groups["said"].Value)}; source: {GuideWords.HowOften(word)}, seven parts in ten beside three of the species row, as a type is described by its usual colour"],
        _ when basis.StartsWith(Frequency, StringComparison.Ordinal) => Say[$"frequency word: {basis[Frequency.Length..]}"],
        _ when basis.StartsWith(Memory, StringComparison.Ordinal) => Say[$"from memory: {basis[Memory.Length..]}"],
        _ when LeftOpen().Match(basis) is { Success: true } open => open.Groups["species"].Success
            ? Say[$"what the words for the other states leave open ({open.Groups["share"].Value} in 100), spread as in the species and over the five domesticated species"]
            : Say[$"what the words for the other states leave open ({open.Groups["share"].Value} in 100), spread evenly"],
        _ => basis,
    };

    [GeneratedRegex("^(?<said>.+); source: (?<word>[a-z]+), ((?<three>one part in three beside two pooled over the five domesticated species)|seven parts in ten beside three of the species row, as a type is described by its usual colour)$")]
    private static partial Regex Weighed();

    [GeneratedRegex(@"^what the words? for the other states? leaves? open \((?<share>\d+) in 100\), spread (evenly|(?<species>as in the species and over the five domesticated species))$")]
    private static partial Regex LeftOpen();
}
