using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A packet on a recall's list.</summary>
/// <param name="Code">The packet.</param>
/// <param name="Standing">Where it stands.</param>
/// <param name="Who">Who has it or had it last; null while it never left.</param>
/// <param name="ToldAt">When they were told; null while they were not.</param>
/// <param name="Answer">What they answered; null while they did not.</param>
/// <param name="Note">What is to be known beside the answer; null for nothing.</param>
/// <param name="WhoId">The person of <paramref name="Who"/>; null where there is none.</param>
/// <param name="FirstToldAt">When they were told for the first time, before a reminder or before it was opened again; null while they never were.</param>
public sealed record RecalledPacket(string Code, PacketStanding Standing, string? Who, DateTimeOffset? ToldAt, RecallAnswer? Answer, string? Note = null, Guid? WhoId = null, DateTimeOffset? FirstToldAt = null);

/// <summary>One recall.</summary>
/// <param name="HoldId">Its number; lifting this hold closes it.</param>
/// <param name="Code">The code of the accession, lot or packet it began at.</param>
/// <param name="Name">What that goes by.</param>
/// <param name="RecalledOn">The day.</param>
/// <param name="Reason">Why.</param>
/// <param name="ClosedOn">The day it was closed; null while it is open.</param>
/// <param name="Packets">Its list.</param>
public sealed record RecallView(long HoldId, string Code, GoesBy Name, DateOnly RecalledOn, string Reason, DateOnly? ClosedOn, IReadOnlyList<RecalledPacket> Packets)
{
    /// <summary>Lots, growings and other libraries downstream; read for one recall, empty in the list of all.</summary>
    public RecallReach Reach { get; init; } = RecallReach.None;

    /// <summary>Why it was closed; null while it is open.</summary>
    public string? ClosedWhy { get; init; }
}

/// <summary>Recalls as read.</summary>
public sealed record RecallViews(IReadOnlyList<RecallView> Recalls)
{
    /// <summary>Those started in one go together, open ones first, newest first.</summary>
    public IReadOnlyList<RecallGroup> Groups => RecallGroup.Of(Recalls);
}

/// <summary>Recalls: reads them, notes who was told, and takes holders' answers.</summary>
public sealed class RecallList(IDbContextFactory<LibraryDbContext> factory, TimeProvider clock)
{
    public const string NotOnListCode = "recall.not-on-list";
    public const string NoteLongCode = "recall.note-long";

    /// <summary>The most recalls that are named where not all have room.</summary>
    public const int MostUntold = 3;

    /// <summary>Longest note beside an answer, in characters.</summary>
    public const int LongestNote = SeedText.Why;

    /// <summary>Recalls, open ones first, newest first.</summary>
    public Task<Outcome<RecallViews>> ReadAsync(Actor actor, CancellationToken stop) => ReadAsync(actor, null, stop);

    /// <summary>One recall by its number.</summary>
    public async Task<Outcome<RecallView>> OneAsync(Actor actor, long holdId, CancellationToken stop)
    {
        if (!(await ReadAsync(actor, holdId, stop)).TryGet(out var read, out var no)) return no;
        if (read.Recalls.Count == 0) return FindingRefusals.NoHold;
        await using var db = await factory.CreateDbContextAsync(stop);
        var start = await db.Set<RecallRow>().Where(recall => recall.HoldId == holdId).Select(recall => recall.NodeId).SingleAsync(stop);
        var recall = read.Recalls[0];
        var reach = await RecallReach.OfAsync(db, [start], stop);
        if (reach.Libraries.Count > 0)
        {
            var told = await db.Set<RecallLibraryRow>().AsNoTracking().Where(row => row.HoldId == holdId).ToDictionaryAsync(row => row.Entry, row => (DateTimeOffset?)row.ToldAt, stop);
            reach = reach with { Libraries = [.. reach.Libraries.Select(library => library with { ToldAt = told.GetValueOrDefault(library.Entry) })] };
        }
        if (recall.ClosedOn is not null) return recall with { Reach = reach };

        // Packets that were put up while it was closed are held with the rest.
        var listed = recall.Packets.Select(packet => packet.Code).ToHashSet();
        var below = await LineageSql.PacketsBelow(db, start).AsNoTracking().Where(packet => packet.Standing != PacketStanding.Void && packet.HolderId == null).OrderBy(packet => packet.Code).ToListAsync(stop);
        return recall with { Reach = reach, Packets = [.. recall.Packets, .. below.Where(packet => !listed.Contains(packet.Code)).Select(packet => new RecalledPacket(packet.Code, packet.Standing, null, null, null))] };
    }

    /// <summary>Open recalls with a holder who was not told, newest first, at most <see cref="MostUntold"/>; an empty list where there is none.</summary>
    public async Task<Outcome<RecallViews>> UntoldAsync(Actor actor, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var newest = await db.Set<RecallAnswerRow>().Where(answer => answer.ToldAt == null)
            .Join(db.Set<HoldRow>().Where(hold => !hold.IsVoid && hold.ReleasedOn == null), answer => answer.HoldId, hold => hold.Id, (answer, hold) => answer)
            .Join(db.Set<PacketRow>().Where(packet => packet.HolderId != null), answer => answer.PacketId, packet => packet.Id, (answer, packet) => answer.HoldId)
            .Distinct().OrderByDescending(hold => hold).Take(MostUntold).ToListAsync(stop);
        var recalls = new List<RecallView>();
        foreach (var hold in newest)
        {
            if (!(await ReadAsync(actor, hold, stop)).TryGet(out var read, out var no)) return no;
            recalls.AddRange(read.Recalls);
        }

        return new RecallViews(recalls);
    }

    private async Task<Outcome<RecallViews>> ReadAsync(Actor actor, long? only, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = await db.Set<RecallRow>().AsNoTracking().Where(recall => only == null || recall.HoldId == only)
            .Join(db.Set<HoldRow>().Where(hold => !hold.IsVoid), recall => recall.HoldId, hold => hold.Id, (recall, hold) => new { Recall = recall, hold.ReleasedOn, hold.ReleasedWhy })
            .OrderBy(row => row.ReleasedOn != null).ThenByDescending(row => row.Recall.HoldId).Take(100).ToListAsync(stop);
        var holdIds = rows.Select(row => row.Recall.HoldId).ToArray();
        var packets = await ListedPacket.Of(db).Where(listed => holdIds.Contains(listed.HoldId)).Select(listed => new { listed.HoldId, listed.PacketId }).Distinct()
            .Join(db.Set<PacketRow>(), listed => listed.PacketId, packet => packet.Id, (listed, packet) => new { listed.HoldId, packet.Id, packet.Code, packet.Standing, packet.HolderId }).ToListAsync(stop);
        var answers = await db.Set<RecallAnswerRow>().AsNoTracking().Where(answer => holdIds.Contains(answer.HoldId)).ToDictionaryAsync(answer => (answer.HoldId, answer.PacketId), stop);
        var people = await PersonNames.OfAsync(db, packets.Select(packet => packet.HolderId), stop);
        var nodes = rows.Select(row => row.Recall.NodeId).Distinct().ToArray();
        var names = await LineageNames.OfAsync(db, nodes, stop);
        var codes = await RecallReach.CodesAsync(db, nodes, stop);
        return new RecallViews([.. rows.Select(row => new RecallView(
            row.Recall.HoldId, codes.GetValueOrDefault(row.Recall.NodeId, ""), names[row.Recall.NodeId], row.Recall.RecalledOn, row.Recall.Reason, row.ReleasedOn,
            [.. packets.Where(packet => packet.HoldId == row.Recall.HoldId).OrderByDescending(packet => packet.Standing == PacketStanding.Lent).ThenBy(packet => packet.Code, StringComparer.Ordinal).Select(packet =>
            {
                var answer = answers.GetValueOrDefault((packet.HoldId, packet.Id));
                return new RecalledPacket(packet.Code, packet.Standing, packet.HolderId is { } holder ? people.GetValueOrDefault(holder) : null, answer?.ToldAt, answer?.Answer, answer?.Note, packet.HolderId, answer?.FirstToldAt ?? answer?.ToldAt);
            })])
        { ClosedWhy = row.ReleasedWhy })]);
    }

    /// <summary>Takes the answer of somebody who has a recalled packet; a later one replaces it.</summary>
    public Task<Outcome<RecallAnswerRow>> AnswerAsync(Actor actor, long holdId, string? packetCode, RecallAnswer answer, CancellationToken stop) => AnswerAsync(actor, holdId, packetCode, answer, null, stop);

    /// <summary>Notes what a holder answered, as a librarian heard it.</summary>
    /// <param name="actor">The holder, or a librarian; the note is a librarian's.</param>
    /// <param name="holdId">The recall.</param>
    /// <param name="packetCode">The packet.</param>
    /// <param name="answer">Null takes an answer back that was noted by mistake.</param>
    /// <param name="note">What is to be known beside it, such as who has the packet now; null leaves what stands, empty takes it away.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<RecallAnswerRow>> AnswerAsync(Actor actor, long holdId, string? packetCode, RecallAnswer? answer, string? note, CancellationToken stop)
    {
        if (!actor.IsSignedIn) return PeopleRefusals.SignInFirst;
        if (note?.Length > LongestNote) return new Refusal(NoteLongCode, $"Keep it under {LongestNote} characters.");
        await using var db = await factory.CreateDbContextAsync(stop);
        var packetId = await db.Set<PacketRow>().Where(packet => packet.Code == packetCode).Select(packet => packet.Id).SingleOrDefaultAsync(stop);
        var row = await db.Set<RecallAnswerRow>().SingleOrDefaultAsync(known => known.HoldId == holdId && known.PacketId == packetId, stop);
        if (row is null) return new Refusal(NotOnListCode, "This packet is not on the list of that recall. Scan its code again.");
        if (row.PersonId != actor.UserId && !actor.IsLibrarian) return PeopleRefusals.NotYours;
        row.Answer = answer;
        row.AnsweredAt = answer is null ? null : clock.GetUtcNow();
        row.ToldAt ??= row.AnsweredAt;
        row.FirstToldAt ??= row.ToldAt;
        if (note is not null && actor.IsLibrarian) row.Note = note.Trim().Length == 0 ? null : note.Trim();
        await db.SaveChangesAsync(stop);
        return row;
    }

    /// <summary>Notes that another library, which has seed of a recall, was told.</summary>
    public async Task<Outcome<RecallLibraryRow>> LibraryToldAsync(Actor actor, long holdId, long entry, CancellationToken stop)
    {
        if (!(await OneAsync(actor, holdId, stop)).TryGet(out var recall, out var no)) return no;
        if (recall.Reach.Libraries.All(library => library.Entry != entry)) return new Refusal(NotOnListCode, "No seed of that recall went to this library.");
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<RecallLibraryRow>().FindAsync([holdId, entry], stop);
        if (row is null) db.Add(row = new RecallLibraryRow { HoldId = holdId, Entry = entry, ToldAt = clock.GetUtcNow() });
        await db.SaveChangesAsync(stop);
        return row;
    }

    /// <summary>Notes that the holder of a packet was told.</summary>
    public async Task<Outcome<RecallAnswerRow>> ToldAsync(Actor actor, long holdId, string? packetCode, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var packetId = await db.Set<PacketRow>().Where(packet => packet.Code == packetCode).Select(packet => packet.Id).SingleOrDefaultAsync(stop);
        var row = await db.Set<RecallAnswerRow>().SingleOrDefaultAsync(known => known.HoldId == holdId && known.PacketId == packetId, stop);
        if (row is null) return new Refusal(NotOnListCode, "Nobody has this packet, or it is not on the list of that recall.");
        row.ToldAt ??= clock.GetUtcNow();
        row.FirstToldAt ??= row.ToldAt;
        await db.SaveChangesAsync(stop);
        return row;
    }
}
