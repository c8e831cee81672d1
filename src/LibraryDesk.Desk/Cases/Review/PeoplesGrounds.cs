using System.Globalization;
using System.Text.Json;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Words.Guides;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Why the opinions of a round became a determination. Facts are kept, not words, so that everybody reads them in their own language.</summary>
/// <param name="Agreeing">Opinions that name what is determined.</param>
/// <param name="All">Opinions of the round.</param>
/// <param name="Changed">How many of the agreeing came to it in the review.</param>
/// <param name="IsAgainstOdds">True where the odds put it under 1 in 20.</param>
/// <param name="AgainstTraits">Names of traits that decide against it, as the guide writes them.</param>
/// <param name="PacketCode">The packet that gave the variety; null where none is named.</param>
public sealed record PeoplesGrounds(int Agreeing, int All, int Changed, bool IsAgainstOdds, IReadOnlyList<string> AgainstTraits, string? PacketCode = null)
{
    /// <summary>The grounds of a determination in the reader's language; what a librarian wrote stays as written.</summary>
    public static string Of(DeterminationRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return row.AloneById is null && row.Grounds.StartsWith('{') ? JsonSerializer.Deserialize<PeoplesGrounds>(row.Grounds)!.InWords(row.GuideId) : row.Grounds;
    }

    /// <summary>As <see cref="DeterminationRow.Grounds"/> keeps them.</summary>
    public string ToJson() => JsonSerializer.Serialize(this);

    /// <summary>In whole sentences.</summary>
    /// <param name="guideId">The guide whose trait names they are.</param>
    public string InWords(string guideId)
    {
        var said = new List<string> { People };
        if (Changed > 0) said.Add(Say[$"{Word(Changed)} of them came to it in the review."]);
        if (IsAgainstOdds) said.Add(Say["The odds put it under 1 in 20; the people decided against them."]);
        if (AgainstTraits.Count > 0) said.Add(Say[$"Speaks against it: {string.Join(", ", AgainstTraits.Select(name => GuideBooks.Say(guideId, name)))}. They looked at that and hold to it."]);
        if (PacketCode is { } packet) said.Add(Say[$"The variety is by its origin: the plant is tied to packet {packet}, and no trait contradicts it."]);
        return string.Join(' ', said);
    }

    private string People => (Agreeing, All) switch
    {
        (1, 1) => Say["One opinion, given unseen; this library asks for one."],
        var (agreeing, all) when agreeing == all => Say[$"{Word(agreeing)} opinions, each sealed before the others were seen, name the same."],
        var (agreeing, all) => Say[$"{Word(agreeing)} of {Word(all).ToLower(CultureInfo.CurrentCulture)} opinions, each sealed before the others were seen, name the same."],
    };

    private static string Word(int count) => count switch
    {
        1 => Say["One"],
        2 => Say["Two"],
        3 => Say["Three"],
        4 => Say["Four"],
        5 => Say["Five"],
        _ => count.ToString(CultureInfo.CurrentCulture),
    };
}
