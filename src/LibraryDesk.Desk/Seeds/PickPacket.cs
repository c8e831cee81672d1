using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Takes a packet off the shelf for a request; it waits there for the member.</summary>
public sealed class PickPacket(SeedLedger ledger)
{
    public Task<Outcome<Packet>> RunAsync(Actor actor, long requestId, string? packetCode, CancellationToken stop) =>
        actor.IsVolunteer
            ? ledger.RecordAsync<Packet>(actor, async work =>
            {
                if (!(await work.RequestAsync(requestId)).TryGet(out var request, out var noRequest)) return noRequest;
                if (!(await work.PacketAsync(packetCode)).TryGet(out var packet, out var noPacket)) return noPacket;
                var holds = await work.HoldsAboveAsync(packet.Id.Node);

                if (!LendingRules.Pick(request, packet, holds).TryGet(out var picked, out var no)) return no;

                work.Append(picked);
                return work.State.Find(packet.Id)!;
            }, stop)
            : Task.FromResult<Outcome<Packet>>(PeopleRefusals.VolunteersOnly);
}
