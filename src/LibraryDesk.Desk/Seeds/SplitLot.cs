using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Takes part of a lot off as a lot of its own.</summary>
public sealed class SplitLot(SeedLedger ledger)
{
    /// <param name="actor">A librarian.</param>
    /// <param name="lotCode">The lot to take from.</param>
    /// <param name="amount">How much, in either unit.</param>
    /// <param name="madeOn">The day; null for today.</param>
    /// <param name="place">Where the part is kept; null when not said.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<LotCode>> RunAsync(Actor actor, string? lotCode, Quantity amount, DateOnly? madeOn, string? place, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<LotCode>(actor, async work =>
            {
                if (!(await work.LotAsync(lotCode)).TryGet(out var lot, out var noLot)) return noLot;

                var wanted = await work.NewLotAsync(madeOn, place);
                var taking = new LotTaking(SeedStock.Of(lot), lot.Species, amount, []);
                if (!LotRules.Split(wanted, taking, work.Today).TryGet(out var made, out var no)) return no;

                work.Append(made);
                return wanted.Code;
            }, stop)
            : Task.FromResult<Outcome<LotCode>>(PeopleRefusals.LibrariansOnly);
}
