using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What was done at the counter.</summary>
/// <param name="Sequence">The ledger's number of it; a correction names this.</param>
/// <param name="At">When.</param>
/// <param name="PacketCode">The packet.</param>
/// <param name="Name">What its seed goes by.</param>
/// <param name="Person">The borrower or who brought it; null when not known.</param>
/// <param name="PersonId">Their id, for lending more to them.</param>
/// <param name="IsLending">True for a packet handed over, false for a loan that ended.</param>
/// <param name="DueOn">When seed of it is hoped for; null when none is asked back, or for a loan that ended.</param>
/// <param name="Ending">How the loan ended; null for a lending.</param>
/// <param name="IsUndone">True when a later entry corrects it.</param>
public sealed record CounterLine(long Sequence, DateTimeOffset At, string PacketCode, GoesBy Name, string? Person, Guid? PersonId, bool IsLending, DateOnly? DueOn, LoanEnding? Ending, bool IsUndone)
{
    /// <summary>True where one correction takes it back. Seed that came home has become a lot: that is corrected on the lot's page.</summary>
    public bool CanUndo => !IsUndone && Ending != LoanEnding.ReturnedSeed;
}

/// <summary>The day as read.</summary>
public sealed record CounterLines(IReadOnlyList<CounterLine> Lines);

/// <summary>Reads today's lendings, endings and returns out of the ledger, newest first.</summary>
public sealed class CounterDay(IDbContextFactory<LibraryDbContext> factory, LibraryClock clock)
{
    private const int Most = 200;

    private static readonly string[] Kinds = [SeedActJson.NameOf(EntryKind.Lent), SeedActJson.NameOf(EntryKind.LoanEnded), SeedActJson.NameOf(EntryKind.Returned)];

    public async Task<Outcome<CounterLines>> ReadAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        var midnight = clock.BeginOf(clock.Today);
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = await db.Set<LedgerEntryRow>().AsNoTracking()
            .Where(row => row.At >= midnight && Kinds.Contains(row.Kind)).OrderByDescending(row => row.Sequence).Take(Most).ToListAsync(stop);
        var acts = rows.Select(row => (row.Sequence, row.At, Act: row.ToEntry()?.ReadAct())).Where(line => line.Act is not null).ToArray();
        var undone = await UndoneAsync(db, midnight, stop);
        var packets = await PacketsAsync(db, acts.Select(line => line.Act!), stop);
        var loanIds = acts.Select(line => LoanOf(line.Act!)).OfType<long>().Distinct().ToArray();
        var borrowers = await db.Set<LoanRow>().Where(loan => loanIds.Contains(loan.Id)).ToDictionaryAsync(loan => loan.Id, loan => loan.BorrowerId, stop);
        var people = await PersonNames.OfAsync(db, acts.Select(line => PersonOf(line.Act!, borrowers)), stop);
        var names = await LineageNames.OfAsync(db, [.. packets.Values.Select(packet => packet.LotId).Distinct()], stop);
        return new CounterLines([.. acts.Where(line => packets.ContainsKey(NodeOf(line.Act!))).Select(line =>
        {
            var packet = packets[NodeOf(line.Act!)];
            var person = PersonOf(line.Act!, borrowers);
            return new CounterLine(
                line.Sequence, line.At, packet.Code, names[packet.LotId], person is { } id ? people.GetValueOrDefault(id) : null, person, line.Act is Lent, (line.Act as Lent)?.DueOn,
                line.Act switch { LoanEnded ended => ended.Ending, Returned => LoanEnding.ReturnedSeed, _ => null }, undone.Contains(line.Sequence));
        })]);
    }

    private static async Task<HashSet<long>> UndoneAsync(LibraryDbContext db, DateTimeOffset since, CancellationToken stop)
    {
        var kind = SeedActJson.NameOf(EntryKind.Corrected);
        var rows = await db.Set<LedgerEntryRow>().AsNoTracking().Where(row => row.At >= since && row.Kind == kind).OrderBy(row => row.Sequence).ToListAsync(stop);
        return [.. rows.Select(row => row.ToEntry()?.ReadAct()).OfType<Corrected>().Select(correction => correction.Entry)];
    }

    // The packet of each act: its own, or the one its grow-out was sown from.
    private static async Task<Dictionary<long, (string Code, long LotId)>> PacketsAsync(LibraryDbContext db, IEnumerable<SeedAct> acts, CancellationToken stop)
    {
        var nodes = acts.Select(NodeOf).Distinct().ToArray();
        var packets = (await db.Set<PacketRow>().Where(packet => nodes.Contains(packet.Id)).Select(packet => new { packet.Id, packet.Code, packet.LotId }).ToListAsync(stop))
            .ToDictionary(packet => packet.Id, packet => (packet.Code, packet.LotId));
        var grown = await db.Set<GrowOutRow>().Where(growOut => nodes.Contains(growOut.Id))
            .Join(db.Set<PacketRow>(), growOut => growOut.FromId, packet => packet.Id, (growOut, packet) => new { growOut.Id, packet.Code, packet.LotId }).ToListAsync(stop);
        foreach (var growOut in grown) packets[growOut.Id] = (growOut.Code, growOut.LotId);
        return packets;
    }

    private static long NodeOf(SeedAct act) => act.Subjects.First().Value;

    private static long? LoanOf(SeedAct act) => act switch { LoanEnded ended => ended.Loan.Value, Returned returned => returned.Loan?.Value, _ => null };

    private static Guid? PersonOf(SeedAct act, Dictionary<long, Guid> borrowers) => act switch
    {
        Lent lent => lent.Borrower.Value,
        Returned { By: { } by } => by.Value,
        _ => LoanOf(act) is { } loan && borrowers.TryGetValue(loan, out var borrower) ? borrower : null,
    };
}
