using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Makes a lot of seed that lies with an accession or a grow-out. Split and blend have acts of their own.</summary>
public sealed class MakeLot(SeedLedger ledger)
{
    /// <param name="actor">A librarian.</param>
    /// <param name="accessionCode">The accession.</param>
    /// <param name="amount">How much of it; null for all.</param>
    /// <param name="madeOn">The day; null for today.</param>
    /// <param name="place">Where it is kept; null when not said.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<LotCode>> FromAccessionAsync(Actor actor, string? accessionCode, Quantity? amount, DateOnly? madeOn, string? place, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<LotCode>(actor, async work =>
            {
                if (!(await work.AccessionAsync(accessionCode)).TryGet(out var accession, out var noAccession)) return noAccession;

                var wanted = await work.NewLotAsync(madeOn, place);
                if (!LotRules.FromAccession(wanted, new(SeedStock.Of(accession), accession.Species, amount, []), work.Today).TryGet(out var made, out var no)) return no;

                work.Append(made);
                return wanted.Code;
            }, stop)
            : Task.FromResult<Outcome<LotCode>>(PeopleRefusals.LibrariansOnly);

    /// <param name="actor">A librarian.</param>
    /// <param name="growOutId">The grow-out whose harvest came back.</param>
    /// <param name="amount">How much of it; null for all.</param>
    /// <param name="madeOn">The day; null for today.</param>
    /// <param name="place">Where it is kept; null when not said.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<LotCode>> FromHarvestAsync(Actor actor, long growOutId, Quantity? amount, DateOnly? madeOn, string? place, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<LotCode>(actor, async work =>
            {
                if (!(await work.GrowOutAsync(growOutId)).TryGet(out var growOut, out var noGrowOut)) return noGrowOut;
                var name = (await LineageNames.OfAsync(work.Db, [growOut.Id.Value], work.Stop))[growOut.Id.Value];

                var wanted = await work.NewLotAsync(madeOn, place);
                if (!LotRules.FromHarvest(wanted, new(SeedStock.Of(growOut), name.Species, amount, []), work.Today).TryGet(out var made, out var no)) return no;

                work.Append(made);
                return wanted.Code;
            }, stop)
            : Task.FromResult<Outcome<LotCode>>(PeopleRefusals.LibrariansOnly);
}
