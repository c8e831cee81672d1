using System.Globalization;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.Loans;
using LibraryDesk.Web.Features.SeedLineage;
using static LibraryDesk.Web.Features.Lots.LotsText;

namespace LibraryDesk.Web.Features.Lots;

/// <summary>A ledger entry in one line, without people.</summary>
internal static class EntryWords
{
    public static string Of(HistoryLine line) => line.Act is { } act ? Of(act) : Say[$"{line.Kind}: the entry is damaged"];

    private static string Of(SeedAct act) => act switch
    {
        Accessioned accessioned => Say[$"came in as {accessioned.Code}, {SeedWords.Seed(accessioned.Received)}"],
        TransferredIn transferred => Say[$"came in from {transferred.Library} as {transferred.Code}, {SeedWords.Seed(transferred.Received)}"],
        LotMade made => Say[$"lot {made.Code} made ({Origin(made.Origin)}), {Sum(made)}"],
        Packeted packeted => Say.Count(packeted.Packets.Count, $"{packeted.Packets.Count} packet put up, {SeedWords.Seed(packeted.Packets[0].Holds)} each", $"{packeted.Packets.Count} packets put up, {SeedWords.Seed(packeted.Packets[0].Holds)} each"),
        Requested => Say["a packet asked for"],
        Picked => Say["a packet picked"],
        Lent => Say["a packet lent"],
        LoanEnded ended => Say[$"a loan ended: {SeedWords.Ending(ended.Ending)}"],
        GrownOut { Facts.PlantsGrown: { } plants } => Say.Count(plants, $"grown for seed, {plants} plant", $"grown for seed, {plants} plants"),
        GrownOut => Say["grown for seed"],
        Returned returned => Say[$"{SeedWords.Seed(returned.Seed)} came back"],
        GerminationTested tested => Say[$"germination {tested.Replicates.Sum(part => part.Germinated)} of {tested.Replicates.Sum(part => part.Sown)}"],
        Named named => Say[$"named {(named.Variety is { } variety ? Quotes.Of(variety) : SpeciesNames.Of(named.Species ?? ""))}, {SeedWords.Grounds(named.Grounds).ToLower(CultureInfo.CurrentCulture)}"],
        Held held => Say[$"put on hold: {SeedWords.Reason(held.Reason)}"],
        Released released => Say[$"hold lifted: {released.Why}"],
        Recalled recalled => Say.Count(recalled.Packets.Count, $"recalled, {recalled.Packets.Count} packet: {recalled.Reason}", $"recalled, {recalled.Packets.Count} packets: {recalled.Reason}"),
        Moved moved => Say[$"moved to {moved.To}"],
        Counted counted => counted.Found == counted.Expected ? Say[$"counted, {SeedWords.Seed(counted.Found)} as expected"] : Say[$"counted, {SeedWords.Seed(counted.Found)} where {SeedWords.Seed(counted.Expected)} was expected: {counted.Reason}"],
        Discarded discarded => Say[$"{SeedWords.Seed(discarded.Seed)} thrown away: {discarded.Reason}"],
        TransferredOut sent => Say[$"{SeedWords.Seed(sent.Seed)} sent to {sent.Library}"],
        Corrected corrected => corrected.Instead is null ? Say[$"entry {corrected.Entry} undone: {Why(corrected)}"] : Say[$"entry {corrected.Entry} said anew: {Why(corrected)}"],
        _ => act.Kind.ToString(),
    };

    // The desk's own reasons are kept in English; what a person wrote stays as written.
    private static string Why(Corrected corrected) => corrected.Why switch
    {
        LoansPage.UndoneAtCounter => Say["undone at the counter"],
        ReturnSeed.ToldAnew => Say["told anew when the seed came back"],
        var written => written,
    };

    private static string Sum(LotMade made) => SeedWords.Seed(new Quantity(made.Sources.Sum(source => source.Given.Amount), made.Unit));

    private static string Origin(LotOrigin origin) => origin switch
    {
        LotOrigin.Intake => Say["as it came in"],
        LotOrigin.Harvest => Say["of a harvest"],
        LotOrigin.Split => Say["split off"],
        _ => Say["a blend"],
    };
}
