using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A packet to hand over.</summary>
/// <param name="PacketCode">As typed or scanned.</param>
/// <param name="BorrowerId">Who takes it; null for the actor.</param>
/// <param name="LentOn">The day; null for today.</param>
/// <param name="DueOn">When seed is hoped for; null when none is asked back. Members always get the day of the library's settings, a librarian who takes a packet gets it where none is given.</param>
/// <param name="RequestId">The request it answers; null when taken from the shelf.</param>
public sealed record Handover(string? PacketCode, Guid? BorrowerId = null, DateOnly? LentOn = null, DateOnly? DueOn = null, long? RequestId = null);

/// <summary>A packet that was lent.</summary>
public sealed record PacketLent(LoanId Loan, string PacketCode);

/// <summary>Hands a packet over. Members take packets for themselves; a librarian lends to anybody. Of two who want the last packet, one gets it.</summary>
public sealed class LendPacket(SeedLedger ledger)
{
    public Task<Outcome<PacketLent>> RunAsync(Actor actor, Handover handover, CancellationToken stop)
    {
        if (!actor.IsSignedIn) return Task.FromResult<Outcome<PacketLent>>(PeopleRefusals.SignInFirst);
        if (!actor.IsLibrarian && handover.BorrowerId is { } other && other != actor.UserId) return Task.FromResult<Outcome<PacketLent>>(PeopleRefusals.LibrariansOnly);
        return ledger.RecordAsync(actor, work => LendAsync(work, actor, handover), stop);
    }

    private static async Task<Outcome<PacketLent>> LendAsync(SeedWork work, Actor actor, Handover handover)
    {
        if (!(await work.PacketAsync(handover.PacketCode)).TryGet(out var packet, out var noPacket)) return noPacket;
        SeedRequest? request = null;
        if (handover.RequestId is { } id && !(await work.RequestAsync(id)).TryGet(out request, out var noRequest)) return noRequest;
        var holds = await work.HoldsAboveAsync(packet.Id.Node);

        var borrower = handover.BorrowerId is { } named ? new PersonId(named) : work.Person;
        var lentOn = handover.LentOn ?? work.Today;
        var takesOne = !actor.IsLibrarian || (handover.BorrowerId is null && handover.DueOn is null);
        var dueOn = takesOne && (await work.SettingsAsync()).LoanDays is > 0 and var days ? lentOn.AddDays(days) : handover.DueOn;
        var lending = LendingRules.Lend(work.Ids.Next<LoanId>(), packet, holds, request, borrower, lentOn, dueOn, work.Today);
        if (!lending.TryGet(out var lent, out var no)) return no;

        work.Append(lent);
        return new PacketLent(lent.Loan, packet.Code.ToString());
    }
}
