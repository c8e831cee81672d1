using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Notes that a member asks for a packet of a lot.</summary>
public sealed class RequestPacket(SeedLedger ledger)
{
    public Task<Outcome<RequestId>> RunAsync(Actor actor, string? lotCode, CancellationToken stop) =>
        actor.IsSignedIn
            ? ledger.RecordAsync<RequestId>(actor, async work =>
            {
                if (!(await work.LotAsync(lotCode)).TryGet(out var lot, out var noLot)) return noLot;
                var lotId = lot.Id.Value;
                var onShelf = await work.Db.Set<PacketRow>().CountAsync(packet => packet.LotId == lotId && packet.Standing == PacketStanding.OnShelf, work.Stop);
                var holds = await work.HoldsAboveAsync(lot.Id.Node);

                if (!LendingRules.Request(work.Ids.Next<RequestId>(), lot, onShelf, holds, work.Person).TryGet(out var requested, out var no)) return no;

                work.Append(requested);
                return requested.Request;
            }, stop)
            : Task.FromResult<Outcome<RequestId>>(PeopleRefusals.SignInFirst);
}
