using System.Globalization;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;

namespace LibraryDesk.Web.Features.Lots;

/// <summary>A ledger entry in one line, without people.</summary>
internal static class EntryWords
{
    public static string Of(HistoryLine line) => line.Act is { } act ? Of(act) : $"{line.Kind}: the entry is damaged";

    private static string Of(SeedAct act) => act switch
    {
        Accessioned accessioned => $"came in as {accessioned.Code}, {accessioned.Received}",
        TransferredIn transferred => $"came in from {transferred.Library} as {transferred.Code}, {transferred.Received}",
        LotMade made => $"lot {made.Code} made ({Origin(made.Origin)}), {Sum(made)}",
        Packeted packeted => Count(packeted.Packets.Count, "packet", "packets") + $" put up, {packeted.Packets[0].Holds} each",
        Requested => "a packet asked for",
        Picked => "a packet picked",
        Lent => "a packet lent",
        LoanEnded ended => $"a loan ended: {SeedWords.Ending(ended.Ending)}",
        GrownOut grown => $"grown for seed{(grown.Facts.PlantsGrown is { } plants ? ", " + Count(plants, "plant", "plants") : "")}",
        Returned returned => $"{returned.Seed} came back",
        GerminationTested tested => string.Create(CultureInfo.InvariantCulture, $"germination {tested.Replicates.Sum(part => part.Germinated)} of {tested.Replicates.Sum(part => part.Sown)}"),
        Named named => $"named {(named.Variety is { } variety ? $"‘{variety}’" : SpeciesNames.Of(named.Species ?? ""))}, {SeedWords.Grounds(named.Grounds).ToLowerInvariant()}",
        Held held => $"held: {SeedWords.Reason(held.Reason)}",
        Released released => $"hold lifted: {released.Why}",
        Recalled recalled => $"recalled, {Count(recalled.Packets.Count, "packet", "packets")}: {recalled.Reason}",
        Moved moved => $"moved to {moved.To}",
        Counted counted => counted.Found == counted.Expected ? $"counted, {counted.Found} as expected" : $"counted, {counted.Found} where {counted.Expected} was expected: {counted.Reason}",
        Discarded discarded => $"{discarded.Seed} thrown away: {discarded.Reason}",
        TransferredOut sent => $"{sent.Seed} sent to {sent.Library}",
        Corrected corrected => string.Create(CultureInfo.InvariantCulture, $"entry {corrected.Entry} {(corrected.Instead is null ? "undone" : "said anew")}: {corrected.Why}"),
        _ => act.Kind.ToString(),
    };

    private static string Sum(LotMade made) => new Quantity(made.Sources.Sum(source => source.Given.Amount), made.Unit).ToString();

    private static string Origin(LotOrigin origin) => origin switch
    {
        LotOrigin.Intake => "as it came in",
        LotOrigin.Harvest => "of a harvest",
        LotOrigin.Split => "split off",
        _ => "a blend",
    };

    private static string Count(int number, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{number} {(number == 1 ? one : many)}");
}
