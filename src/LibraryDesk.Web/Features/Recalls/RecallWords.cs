using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;
using LibraryDesk.Web.Shared.Forms;
using static LibraryDesk.Web.Features.Recalls.RecallsText;

namespace LibraryDesk.Web.Features.Recalls;

/// <summary>Words and counts for recalls: one wording on every page.</summary>
internal static class RecallWords
{
    public static string Answer(RecallAnswer? answer) => answer switch
    {
        null => Say["not yet"],
        RecallAnswer.NotSown => Say["not sown"],
        RecallAnswer.Growing => Say["growing"],
        RecallAnswer.SeedSaved => Say["seed saved"],
        RecallAnswer.PassedOn => Say["passed on"],
        _ => Say["gone"],
    };

    /// <summary>Whether it is open, or since when it is closed.</summary>
    public static string Standing(RecallView recall) => recall.ClosedOn is { } closed ? Say[$"Closed {SeedWords.Day(closed)}"] : Say["Open"];

    /// <summary>Answers to choose from.</summary>
    public static IReadOnlyList<Choice> Answers => [.. Enum.GetValues<RecallAnswer>().Select(answer => new Choice(answer.ToString(), Answer(answer)))];

    /// <summary>Packets that somebody has or had: the ones there is somebody to ask about.</summary>
    public static IReadOnlyList<RecalledPacket> Held(RecallView recall) => [.. recall.Packets.Where(packet => packet.Who is not null)];

    /// <summary>Who has or had a packet; for one that no borrower had, why there is nobody.</summary>
    public static string With(RecalledPacket packet) => packet.Who ?? Say[packet.Standing == PacketStanding.Transferred ? "no borrower" : "never left"];

    public static int Told(RecallView recall) => Held(recall).Count(packet => packet.ToldAt is not null);

    public static int Answered(RecallView recall) => Held(recall).Count(packet => packet.Answer is not null);

    public static string Count(RecallView recall) => Count(recall.Packets);

    public static string Count(IReadOnlyList<RecalledPacket> packets)
    {
        var people = packets.Select(packet => packet.Who).OfType<string>().Distinct().Count();
        return $"{Say.Count(packets.Count, $"{packets.Count} packet", $"{packets.Count} packets")}, {Say.Count(people, $"{people} person", $"{people} people")}";
    }

    /// <summary>One code with its name; for several, how many.</summary>
    public static string Title(IReadOnlyList<string> codes, string? variety) =>
        codes.Count == 1 ? Title(codes[0], variety) : Say[$"{codes.Count} codes from {codes[0]} on"] + (variety is null ? "" : $", ‘{Quotes.Inside(variety)}’");

    public static string Title(string code, string? variety) => variety is null ? code : $"{code} ‘{Quotes.Inside(variety)}’";
}
