using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What one lot gives to a blend.</summary>
/// <param name="LotCode">The lot.</param>
/// <param name="Amount">How much; null for all of it.</param>
public sealed record BlendPart(string? LotCode, Quantity? Amount);

/// <summary>Puts lots of one species together. The new lot remembers each one's share.</summary>
public sealed class BlendLots(SeedLedger ledger)
{
    public Task<Outcome<LotCode>> RunAsync(Actor actor, IReadOnlyList<BlendPart> parts, DateOnly? madeOn, string? place, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<LotCode>(actor, async work =>
            {
                var takings = new List<LotTaking>();
                foreach (var (part, place) in parts.Select((part, place) => (part, place)))
                {
                    if (!(await work.LotAsync(part.LotCode)).TryGet(out var lot, out var noLot)) return LotRules.OfPart(place + 1, noLot);
                    takings.Add(new(SeedStock.Of(lot), lot.Species, part.Amount, await work.HoldsAboveAsync(lot.Id.Node)));
                }

                var wanted = await work.NewLotAsync(madeOn, place);
                if (!LotRules.Blend(wanted, takings, work.Today).TryGet(out var made, out var no)) return no;

                work.Append(made);
                return wanted.Code;
            }, stop)
            : Task.FromResult<Outcome<LotCode>>(PeopleRefusals.LibrariansOnly);
}
