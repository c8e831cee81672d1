using System.Globalization;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Features.Recalls;

/// <summary>Words and counts for recalls: one wording on every page.</summary>
internal static class RecallWords
{
    public static string Answer(RecallAnswer? answer) => answer switch
    {
        null => "not yet",
        RecallAnswer.NotSown => "not sown",
        RecallAnswer.Growing => "growing",
        RecallAnswer.SeedSaved => "seed saved",
        RecallAnswer.PassedOn => "passed on",
        _ => "gone",
    };

    /// <summary>Answers to choose from.</summary>
    public static IReadOnlyList<Choice> Answers { get; } = [.. Enum.GetValues<RecallAnswer>().Select(answer => new Choice(answer.ToString(), Answer(answer)))];

    /// <summary>Packets that somebody has or had: the ones there is somebody to ask about.</summary>
    public static IReadOnlyList<RecalledPacket> Held(RecallView recall) => [.. recall.Packets.Where(packet => packet.Who is not null)];

    public static int Told(RecallView recall) => Held(recall).Count(packet => packet.ToldAt is not null);

    public static int Answered(RecallView recall) => Held(recall).Count(packet => packet.Answer is not null);

    public static string Count(RecallView recall) => Count(recall.Packets);

    public static string Count(IReadOnlyList<RecalledPacket> packets)
    {
        var people = packets.Select(packet => packet.Who).OfType<string>().Distinct().Count();
        return string.Create(CultureInfo.InvariantCulture, $"{packets.Count} {(packets.Count == 1 ? "packet" : "packets")}, {people} {(people == 1 ? "person" : "people")}");
    }

    public static string Title(string code, string? variety) => variety is null ? code : $"{code} ‘{variety}’";
}
