using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>Keeps what is known of where the plant or its seed came from, and takes it back.</summary>
public sealed class AddOriginClue(IDbContextFactory<LibraryDbContext> factory, CaseFeed feed, TimeProvider clock)
{
    public const int MostClues = 40;
    public const string NoSuchPacketCode = "case.no-such-packet";
    public const string NotBorrowedCode = "case.not-borrowed";

    public async Task<Outcome<OriginClueRow>> AddAsync(Actor actor, long caseId, NewOriginClue clue, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(clue);
        await using var db = await factory.CreateDbContextAsync(stop);
        // A librarian sees stakes and packets that are brought to the counter.
        var mine = actor.IsLibrarian && clue.Kind == OriginKind.Stake ? await CaseAccess.SeenToChangeAsync(db, actor, caseId, stop) : await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop);
        if (!mine.TryGet(out var row, out var no)) return no;
        string? code = null;
        if (clue.Kind is OriginKind.Loan or OriginKind.Stake || !string.IsNullOrWhiteSpace(clue.PacketCode))
        {
            if (!(await FindPacketAsync(db, row, clue, stop)).TryGet(out code, out no)) return no;
        }
        var standing = await db.Set<OriginClueRow>().Where(c => c.CaseId == caseId && c.TakenBackAt == null).ToListAsync(stop);

        if (clue.SeedsSown is < 1 or > 10_000) return new Refusal("case.seeds-sown", "Give the number of seeds sown from this packet, from 1 to 10000, or leave it empty.");
        if (clue.Note?.Length > 1000) return new Refusal("case.note", "Keep the note under 1000 characters.");
        if (standing.Count >= MostClues) return new Refusal("case.clues", "A case holds 40 clues. Take back those that no longer help.");
        // The same clue again changes nothing but what was added to it.
        var same = standing.Find(c => c.Kind == clue.Kind && c.PacketCode == code);
        if (same is not null && same.SeedsSown == clue.SeedsSown && same.Note == Text(clue.Note)) return same;

        var now = clock.GetUtcNow();
        if (same is not null) same.TakenBackAt = now;
        var added = new OriginClueRow
        {
            CaseId = caseId,
            Kind = clue.Kind,
            PacketCode = code,
            Tied = clue.Kind == OriginKind.Stake,
            SeedsSown = clue.SeedsSown,
            Note = Text(clue.Note),
            ById = actor.UserId,
            At = now,
        };
        db.Add(added);
        db.AddCaseEvent(caseId, CaseEvents.OriginAdded, actor, now, code ?? clue.Kind.ToString());
        await db.SaveChangesAsync(stop);
        feed.Publish(caseId);
        return added;
    }

    public async Task<Outcome<OriginClueRow>> TakeBackAsync(Actor actor, long caseId, long clueId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await CaseAccess.OwnToChangeAsync(db, actor, caseId, stop)).TryGet(out _, out var no)) return no;
        var clue = await db.Set<OriginClueRow>().SingleOrDefaultAsync(c => c.Id == clueId && c.CaseId == caseId, stop);

        if (clue is null) return new Refusal("case.no-such-clue", "This clue is not in the case. Open the case to see those that are.");
        if (clue.TakenBackAt is not null) return clue;

        clue.TakenBackAt = clock.GetUtcNow();
        db.AddCaseEvent(caseId, CaseEvents.OriginTakenBack, actor, clue.TakenBackAt.Value, clue.PacketCode ?? clue.Kind.ToString());
        await db.SaveChangesAsync(stop);
        feed.Publish(caseId);
        return clue;
    }

    private static async Task<Outcome<string>> FindPacketAsync(LibraryDbContext db, CaseRow row, NewOriginClue clue, CancellationToken stop)
    {
        if (!PacketCode.TryParse(clue.PacketCode, out var read, out var typo)) return typo;
        var code = read.ToString();
        var packet = await db.Set<PacketRow>()
            .Where(p => p.Code == code && p.Standing != PacketStanding.Void)
            .Select(p => new { p.Id })
            .SingleOrDefaultAsync(stop);
        if (packet is null)
            return new Refusal(NoSuchPacketCode, $"{code} reads like a packet code, but this library has no such packet. If it came from another library, choose \"swapped\" and write the code in the note.");
        if (clue.Kind == OriginKind.Loan && !await db.Set<LoanRow>().AnyAsync(l => l.PacketId == packet.Id && l.BorrowerId == row.OwnerId && !l.IsVoid, stop))
            return new Refusal(NotBorrowedCode, $"{code} is not among your loans. If its label or stake is with the plant, enter the code there.");
        return code;
    }

    private static string? Text(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
