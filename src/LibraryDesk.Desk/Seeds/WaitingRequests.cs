using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A packet somebody asked for.</summary>
/// <param name="Id">The request.</param>
/// <param name="LotCode">The lot asked for.</param>
/// <param name="Name">What it goes by.</param>
/// <param name="ById">Who asked.</param>
/// <param name="By">What the library calls them.</param>
/// <param name="PickedCode">The packet kept for it; null while none is.</param>
public sealed record WaitingRequest(long Id, string LotCode, GoesBy Name, Guid ById, string By, string? PickedCode);

/// <summary>Requests as read.</summary>
public sealed record WaitingList(IReadOnlyList<WaitingRequest> Requests);

/// <summary>Reads the requests that wait to be handed over, oldest first.</summary>
public sealed class WaitingRequests(IDbContextFactory<LibraryDbContext> factory)
{
    /// <summary>Everybody's, for librarians.</summary>
    public async Task<Outcome<WaitingList>> ReadAsync(Actor actor, CancellationToken stop) =>
        actor.IsLibrarian ? await ReadAsync(requests => requests, stop) : PeopleRefusals.LibrariansOnly;

    /// <summary>Those of one person, for librarians.</summary>
    public async Task<Outcome<WaitingList>> OfAsync(Actor actor, Guid person, CancellationToken stop) =>
        actor.IsLibrarian ? await ReadAsync(requests => requests.Where(request => request.ById == person), stop) : PeopleRefusals.LibrariansOnly;

    /// <summary>The actor's own.</summary>
    public async Task<Outcome<WaitingList>> MineAsync(Actor actor, CancellationToken stop) =>
        actor.UserId is { } me ? await ReadAsync(requests => requests.Where(request => request.ById == me), stop) : PeopleRefusals.SignInFirst;

    private async Task<WaitingList> ReadAsync(Func<IQueryable<SeedRequestRow>, IQueryable<SeedRequestRow>> choose, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = await choose(db.Set<SeedRequestRow>().AsNoTracking().Where(request => request.LoanId == null && !request.IsVoid)).OrderBy(request => request.Id).Take(200)
            .Join(db.Set<LotRow>(), request => request.LotId, lot => lot.Id, (request, lot) => new { request.Id, request.ById, request.PickedPacketId, LotId = lot.Id, lot.Code })
            .OrderBy(row => row.Id).ToListAsync(stop);
        var picked = rows.Select(row => row.PickedPacketId).OfType<long>().ToArray();
        var codes = await db.Set<PacketRow>().Where(packet => picked.Contains(packet.Id) && packet.Standing == PacketStanding.Picked).ToDictionaryAsync(packet => packet.Id, packet => packet.Code, stop);
        var names = await LineageNames.OfAsync(db, [.. rows.Select(row => row.LotId).Distinct()], stop);
        var people = await PersonNames.OfAsync(db, rows.Select(row => (Guid?)row.ById), stop);
        return new WaitingList([.. rows.Select(row => new WaitingRequest(
            row.Id, row.Code, names[row.LotId], row.ById, people[row.ById], row.PickedPacketId is { } packet ? codes.GetValueOrDefault(packet) : null))]);
    }
}
