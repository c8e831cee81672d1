using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A stocktake of a lot, a packet or an accession: what was found stands from now on, and the difference is on record.</summary>
public sealed class CountStock(SeedLedger ledger)
{
    /// <param name="actor">A librarian.</param>
    /// <param name="code">Of the lot, packet or accession.</param>
    /// <param name="found">What was there, in either unit.</param>
    /// <param name="thousandSeedMilligrams">Seed weight where it was measured; null to keep what is known.</param>
    /// <param name="reason">Why it differs; may be empty when it does not.</param>
    /// <param name="isSure">True when a count far off what is expected is said to be meant.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<Counted>> RunAsync(Actor actor, string? code, Quantity found, long? thousandSeedMilligrams, string? reason, bool isSure, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<Counted>(actor, async work =>
            {
                if (!(await work.StockAsync(code)).TryGet(out var seed, out var noSeed)) return noSeed;

                if (!StockRules.Count(seed, found, thousandSeedMilligrams, work.Today, reason, work.Today, isSure).TryGet(out var counted, out var no)) return no;

                work.Append(counted);
                return counted;
            }, stop)
            : Task.FromResult<Outcome<Counted>>(PeopleRefusals.LibrariansOnly);
}
