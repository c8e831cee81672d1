using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Acts;
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
    public const string OtherNamesCode = "lot.other-names";

    /// <param name="actor">A librarian.</param>
    /// <param name="parts">What each lot gives.</param>
    /// <param name="madeOn">The day; null for today.</param>
    /// <param name="place">Where the blend is kept; null when not said.</param>
    /// <param name="isSure">True when blending lots of different names is said to be meant.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<LotCode>> RunAsync(Actor actor, IReadOnlyList<BlendPart> parts, DateOnly? madeOn, string? place, bool isSure, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<LotCode>(actor, async work =>
            {
                var takings = new List<LotTaking>();
                foreach (var (part, at) in parts.Select((part, at) => (part, at)))
                {
                    if (!(await work.LotAsync(part.LotCode)).TryGet(out var lot, out var noLot)) return LotRules.OfPart(at + 1, noLot);
                    takings.Add(new(SeedStock.Of(lot), lot.Species, part.Amount, await work.HoldsAboveAsync(lot.Id.Node)));
                }

                var wanted = await work.NewLotAsync(madeOn, place);
                if (!LotRules.Blend(wanted, takings, work.Today).TryGet(out var made, out var no)) return no;

                if (!isSure && await OtherNamesAsync(work, made) is { } doubt) return doubt;

                work.Append(made);
                return wanted.Code;
            }, stop)
            : Task.FromResult<Outcome<LotCode>>(PeopleRefusals.LibrariansOnly);

    // One wrong code makes a mixture that nothing takes apart again.
    private static async Task<Refusal?> OtherNamesAsync(SeedWork work, LotMade made)
    {
        var nodes = made.Sources.Select(source => source.From.Value).ToArray();
        var names = await LineageNames.OfAsync(work.Db, nodes, work.Stop);
        var different = nodes.Select(node => names[node].Variety).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        return different.Length < 2
            ? null
            : new(OtherNamesCode, $"These lots go by different names: {string.Join(", ", different.Select(Quotes.Of))}. Check the codes. If it is meant, the blend goes by the largest part's name and is marked as mixed.") { MayInsist = true };
    }
}
