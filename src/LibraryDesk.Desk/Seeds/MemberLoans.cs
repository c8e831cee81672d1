using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A packet somebody has or had.</summary>
/// <param name="LoanId">The loan.</param>
/// <param name="BorrowerId">Who.</param>
/// <param name="Borrower">What the library calls them; empty for the borrower's own list.</param>
/// <param name="PacketCode">The packet.</param>
/// <param name="LotCode">Its lot.</param>
/// <param name="LotId">Its lot's number.</param>
/// <param name="Species">Candidate id of the crop guide; null when not known.</param>
/// <param name="Variety">The name it goes by; null when it has none.</param>
/// <param name="LentOn">The day.</param>
/// <param name="DueOn">When seed is hoped for; null when none is asked back.</param>
/// <param name="Ending">How it ended; null while it runs.</param>
/// <param name="EndedOn">When it ended; null while it runs.</param>
/// <param name="Seed">How much was in the packet.</param>
/// <param name="ThousandSeedMilligrams">Seed weight of the lot; null when not known.</param>
public sealed record MemberLoan(
    long LoanId, Guid BorrowerId, string Borrower, string PacketCode, string LotCode, long LotId, string? Species, string? Variety, DateOnly LentOn, DateOnly? DueOn,
    LoanEnding? Ending, DateOnly? EndedOn, Quantity Seed, long? ThousandSeedMilligrams)
{
    public bool IsOpen => Ending is null;

    /// <summary>True while a recall that takes in the packet is open.</summary>
    public bool IsRecalled { get; init; }

    /// <summary>True when it runs past the day seed was hoped for; what is called back is not waited for.</summary>
    public bool IsOverdueOn(DateOnly today) => IsOpen && !IsRecalled && DueOn < today;

    /// <summary>True while the borrower has not said what became of a packet that is called back.</summary>
    public bool OwesRecallAnswer { get; init; }

    /// <summary>Seeds in the packet, counted or reckoned from the seed weight; null when neither is known.</summary>
    public long? SeedCount => Seed.In(SeedUnit.Seeds, ThousandSeedMilligrams)?.Amount;
}

/// <summary>Reads loans: a member's own, or as a librarian anybody's or all. Volunteers may read the loans of a case's member, without names.</summary>
public sealed class MemberLoans(IDbContextFactory<LibraryDbContext> factory, LibraryClock clock)
{
    public const int MostRows = 500;

    /// <summary>Loans of one person, newest first.</summary>
    public async Task<Outcome<LoanList>> OfAsync(Actor actor, Guid memberId, CancellationToken stop)
    {
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (!actor.IsVolunteer && actor.UserId != memberId) return PeopleRefusals.NotYours;
        return await ReadAsync(loans => loans.Where(loan => loan.BorrowerId == memberId).OrderByDescending(loan => loan.LentOn).ThenByDescending(loan => loan.Id), withNames: false, stop);
    }

    /// <summary>All loans that run, those due first on top.</summary>
    public async Task<Outcome<LoanList>> OpenAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        return await ReadAsync(loans => loans.Where(loan => loan.Ending == null).OrderBy(loan => loan.DueOn == null).ThenBy(loan => loan.DueOn).ThenBy(loan => loan.Id), withNames: true, stop);
    }

    /// <summary>How many running loans are past the day seed was hoped for, without those of seed that is called back. Counted in the database.</summary>
    public async Task<Outcome<int>> CountOverdueAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var today = clock.Today;
        // By the day of ending first, so that the index on both days is used and loans that ended are passed over.
        return await db.Set<LoanRow>().Where(loan => loan.EndedOn == null && loan.DueOn < today && loan.Ending == null && !loan.IsVoid)
            .CountAsync(loan => !ListedPacket.Open(db).Any(listed => listed.PacketId == loan.PacketId), stop);
    }

    /// <summary>One loan: the borrower's own, or for a librarian anybody's.</summary>
    public async Task<Outcome<MemberLoan>> OneAsync(Actor actor, long loanId, CancellationToken stop)
    {
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        var found = (await ReadAsync(loans => loans.Where(loan => loan.Id == loanId), withNames: actor.IsLibrarian, stop)).Loans;
        if (found.Count == 0) return FindingRefusals.NoLoan;
        return actor.IsLibrarian || found[0].BorrowerId == actor.UserId ? found[0] : PeopleRefusals.NotYours;
    }

    /// <summary>The loan that runs of a packet, for a librarian at the counter; refused when it is not out.</summary>
    public async Task<Outcome<MemberLoan>> OpenOfPacketAsync(Actor actor, string code, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var packets = db.Set<PacketRow>().Where(packet => packet.Code == code).Select(packet => packet.Id);
        var id = await db.Set<LoanRow>().Where(loan => packets.Contains(loan.PacketId) && loan.Ending == null && !loan.IsVoid).OrderByDescending(loan => loan.Id).Select(loan => (long?)loan.Id).FirstOrDefaultAsync(stop);
        return id is null ? FindingRefusals.NoLoan : await OneAsync(actor, id.Value, stop);
    }

    private async Task<LoanList> ReadAsync(Func<IQueryable<LoanRow>, IQueryable<LoanRow>> choose, bool withNames, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var loans = await choose(db.Set<LoanRow>().AsNoTracking().Where(loan => !loan.IsVoid)).Take(MostRows).ToListAsync(stop);
        var packetIds = loans.Select(loan => loan.PacketId).Distinct().ToArray();
        var packets = await db.Set<PacketRow>().Where(packet => packetIds.Contains(packet.Id))
            .Join(db.Set<LotRow>(), packet => packet.LotId, lot => lot.Id, (packet, lot) => new { packet.Id, packet.Code, packet.Held, packet.Unit, LotId = lot.Id, LotCode = lot.Code, lot.Species, lot.ThousandSeedMilligrams })
            .ToDictionaryAsync(packet => packet.Id, stop);
        var recalls = (await ListedPacket.Open(db).Where(listed => packetIds.Contains(listed.PacketId)).ToListAsync(stop)).ToLookup(listed => listed.PacketId, listed => listed.HoldId);
        var answered = (await db.Set<RecallAnswerRow>().Where(answer => packetIds.Contains(answer.PacketId) && answer.Answer != null).Select(answer => new { answer.HoldId, answer.PacketId, answer.PersonId }).ToListAsync(stop))
            .Select(answer => (answer.HoldId, answer.PacketId, answer.PersonId)).ToHashSet();
        var names = await LineageNames.OfAsync(db, [.. packets.Values.Select(packet => packet.LotId).Distinct()], stop);
        var people = withNames ? await PersonNames.OfAsync(db, loans.Select(loan => (Guid?)loan.BorrowerId), stop) : new Dictionary<Guid, string>();
        return new([.. loans.Select(loan =>
        {
            var packet = packets[loan.PacketId];
            var name = names[packet.LotId];
            return new MemberLoan(
                loan.Id, loan.BorrowerId, people.GetValueOrDefault(loan.BorrowerId, ""), packet.Code, packet.LotCode, packet.LotId, name.Species ?? packet.Species, name.Variety, loan.LentOn, loan.DueOn,
                loan.Ending, loan.EndedOn, new(packet.Held, packet.Unit), packet.ThousandSeedMilligrams)
            {
                IsRecalled = recalls.Contains(loan.PacketId),
                OwesRecallAnswer = recalls[loan.PacketId].Any(hold => !answered.Contains((hold, loan.PacketId, loan.BorrowerId))),
            };
        })]);
    }
}

/// <summary>Loans as read.</summary>
public sealed record LoanList(IReadOnlyList<MemberLoan> Loans);
