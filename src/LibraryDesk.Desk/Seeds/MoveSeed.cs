using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Moves a lot or a packet to another drawer, freezer or branch.</summary>
public sealed class MoveSeed(SeedLedger ledger)
{
    public Task<Outcome<Moved>> RunAsync(Actor actor, string? code, string? to, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<Moved>(actor, async work =>
            {
                if (!(await work.StockAsync(code)).TryGet(out var seed, out var noSeed)) return noSeed;
                if (work.State.Find(new AccessionId(seed.Node.Value)) is not null) return new Refusal("moving.accession", "An accession is moved with its lots. Give the code of a lot or a packet.");
                var from = work.State.Find(new LotId(seed.Node.Value))?.Place ?? work.State.Find(new PacketId(seed.Node.Value))?.Place;

                if (!StockRules.Move(seed.Node, seed.Began, from, to, work.Today, work.Today, seed.IsVoid).TryGet(out var moved, out var no)) return no;

                work.Append(moved);
                return moved;
            }, stop)
            : Task.FromResult<Outcome<Moved>>(PeopleRefusals.LibrariansOnly);
}
