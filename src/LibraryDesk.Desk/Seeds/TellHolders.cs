using System.Globalization;
using LibraryDesk.Data.Notices;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Seeds.Ledger;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What became of the letters of a recall.</summary>
/// <param name="Letters">People told, by letter or in the app, as each chose.</param>
/// <param name="NoAddress">Packets whose holder has no address here or wants no word from the desk: they are told another way. 0 for reminders, which go to those the desk can reach.</param>
public sealed record HoldersTold(int Letters, int NoAddress);

/// <summary>Somebody a recall has to tell.</summary>
/// <param name="Who">Their name.</param>
/// <param name="Packets">The packets, with their names.</param>
/// <param name="Way">How they will be told; null when the desk cannot tell them.</param>
/// <param name="ToldAt">When they were told last; null while they were not.</param>
public sealed record HolderToTell(string Who, IReadOnlyList<string> Packets, NoticeWay? Way, DateTimeOffset? ToldAt = null);

/// <summary>The letters of a recall before they go.</summary>
/// <param name="People">Everybody not told yet, or for a reminder everybody told on an earlier day who has not answered.</param>
/// <param name="Subject">Of the first letter, in the reader's language; null without anybody to tell.</param>
/// <param name="Letter">The words of the first letter.</param>
/// <param name="HasAddress">True when the desk's address is set, so that letters can carry the way to the page.</param>
public sealed record LettersToSend(IReadOnlyList<HolderToTell> People, string? Subject, string? Letter, bool HasAddress);

/// <summary>Writes to everybody who holds or held a recalled packet and was not told yet, or reminds those who were and have not answered. Letter and note stand or fall together.</summary>
public sealed class TellHolders(IDbContextFactory<LibraryDbContext> factory, LibraryClock clock)
{
    public const string ClosedCode = "recall.closed";

    public Task<Outcome<HoldersTold>> RunAsync(Actor actor, long holdId, CancellationToken stop) => RunAsync(actor, [holdId], stop);

    /// <summary>Writes about several recalls, such as those started together: one word to each person. Those that are closed are left out.</summary>
    public Task<Outcome<HoldersTold>> RunAsync(Actor actor, IReadOnlyList<long> holdIds, CancellationToken stop) => WriteAsync(actor, holdIds, again: false, stop);

    /// <summary>Writes once more to those who were told on an earlier day and have not answered.</summary>
    public Task<Outcome<HoldersTold>> RemindAsync(Actor actor, IReadOnlyList<long> holdIds, CancellationToken stop) => WriteAsync(actor, holdIds, again: true, stop);

    private async Task<Outcome<HoldersTold>> WriteAsync(Actor actor, IReadOnlyList<long> holdIds, bool again, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await AskedAsync(db, holdIds, again, stop)).TryGet(out var asked, out var no)) return no;

        var now = clock.Now;
        var letters = 0;
        foreach (var person in asked.ByPerson)
        {
            if (!await Notice.TellAsync(db, person.Key, () => asked.Word(person, now), now, stop)) continue;
            foreach (var answer in person) (answer.FirstToldAt, answer.ToldAt) = (answer.FirstToldAt ?? answer.ToldAt ?? now, now);
            letters++;
        }

        await db.SaveChangesAsync(stop);
        return new HoldersTold(letters, again ? 0 : asked.Answers.Where(answer => answer.ToldAt != now).Select(answer => answer.PacketId).Distinct().Count());
    }

    /// <summary>Who would be written to, and the first of the letters; nothing is written.</summary>
    public Task<Outcome<LettersToSend>> PreviewAsync(Actor actor, IReadOnlyList<long> holdIds, CancellationToken stop) => PreviewAsync(actor, holdIds, again: false, stop);

    /// <summary>Who would be reminded, and the first of the letters; nothing is written.</summary>
    public Task<Outcome<LettersToSend>> PreviewReminderAsync(Actor actor, IReadOnlyList<long> holdIds, CancellationToken stop) => PreviewAsync(actor, holdIds, again: true, stop);

    private async Task<Outcome<LettersToSend>> PreviewAsync(Actor actor, IReadOnlyList<long> holdIds, bool again, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await AskedAsync(db, holdIds, again, stop)).TryGet(out var asked, out var no)) return no;
        var ids = asked.Answers.Select(answer => answer.PersonId).Distinct().ToArray();
        var names = await PersonNames.OfAsync(db, ids.Select(id => (Guid?)id), stop);
        var reachable = await db.Users.Where(user => ids.Contains(user.Id) && user.ErasedAt == null).Select(user => new { user.Id, user.Email }).ToDictionaryAsync(user => user.Id, user => user.Email, stop);
        var chosen = await db.Set<NoticeChoiceRow>().AsNoTracking().Where(choice => ids.Contains(choice.PersonId) && choice.Kind == NoticeKind.Recall).ToDictionaryAsync(choice => choice.PersonId, choice => choice.Way, stop);
        NoticeWay? WayTo(Guid person)
        {
            if (!reachable.TryGetValue(person, out var email)) return null;
            var way = chosen.TryGetValue(person, out var own) ? own : NoticeChoices.DefaultFor(NoticeKind.Recall);
            return (way, string.IsNullOrWhiteSpace(email)) switch
            {
                (NoticeWay.Off, _) or (NoticeWay.Email, true) => null,
                (NoticeWay.Both, true) => NoticeWay.InApp,
                _ => way,
            };
        }

        var people = asked.ByPerson.Select(person => new HolderToTell(names[person.Key], [.. person.Select(answer => asked.Packets[answer.PacketId].Title).Distinct()], WayTo(person.Key), person.Max(answer => answer.ToldAt))).ToArray();
        // Somebody the desk cannot write to is reminded by who told them the first time.
        if (again) people = [.. people.Where(person => person.Way is not null)];
        var first = asked.ByPerson.FirstOrDefault(person => !again || WayTo(person.Key) is not null) is { } one ? asked.Word(one, clock.Now) : null;
        var address = await db.Set<LibrarySettingsRow>().AsNoTracking().Select(row => row.PublicAddress).SingleOrDefaultAsync(stop);
        return new LettersToSend(people, first?.Heading, first?.Letter, !string.IsNullOrEmpty(address));
    }

    private async Task<Outcome<Asked>> AskedAsync(LibraryDbContext db, IReadOnlyList<long> holdIds, bool again, CancellationToken stop)
    {
        var reasons = await db.Set<RecallRow>().AsNoTracking().Where(row => holdIds.Contains(row.HoldId)).ToDictionaryAsync(row => row.HoldId, row => row.Reason, stop);
        if (reasons.Count < holdIds.Distinct().Count()) return FindingRefusals.NoHold;
        var open = await db.Set<HoldRow>().Where(hold => holdIds.Contains(hold.Id) && hold.ReleasedOn == null && !hold.IsVoid).Select(hold => hold.Id).ToListAsync(stop);
        if (open.Count == 0) return new Refusal(ClosedCode, "This recall is closed, so nobody is written to any more.");
        var answers = await db.Set<RecallAnswerRow>().Where(answer => open.Contains(answer.HoldId) && (again ? answer.ToldAt != null && answer.Answer == null : answer.ToldAt == null)).OrderBy(answer => answer.PacketId).ToListAsync(stop);
        if (again) answers = await StillOwedAsync(db, answers, stop);
        return new Asked(again, answers, await NamedPacket.OfAsync(db, [.. answers.Select(answer => answer.PacketId).Distinct()], stop), reasons);
    }

    // Nobody is reminded on the day they were told, nor of a packet that came back since, or whose loan ended since with how it went.
    private async Task<List<RecallAnswerRow>> StillOwedAsync(LibraryDbContext db, List<RecallAnswerRow> told, CancellationToken stop)
    {
        var ids = told.Select(answer => answer.PacketId).ToArray();
        var holders = await db.Set<PacketRow>().Where(packet => ids.Contains(packet.Id)).Select(packet => new { packet.Id, packet.HolderId }).ToDictionaryAsync(packet => packet.Id, packet => packet.HolderId, stop);
        var ended = (await db.Set<LoanRow>().Where(loan => ids.Contains(loan.PacketId) && loan.EndedOn != null && !loan.IsVoid).Select(loan => new { loan.PacketId, loan.BorrowerId, loan.EndedOn }).ToListAsync(stop))
            .ToLookup(loan => (loan.PacketId, loan.BorrowerId), loan => loan.EndedOn);
        var today = clock.Today;
        return [.. told.Where(answer =>
        {
            var on = clock.DayOf(answer.ToldAt!.Value);
            return on < today && holders.GetValueOrDefault(answer.PacketId) == answer.PersonId && ended[(answer.PacketId, answer.PersonId)].All(day => day < on);
        })];
    }

    private sealed record Asked(bool Again, IReadOnlyList<RecallAnswerRow> Answers, IReadOnlyDictionary<long, NamedPacket> Packets, IReadOnlyDictionary<long, string> Reasons)
    {
        public IEnumerable<IGrouping<Guid, RecallAnswerRow>> ByPerson => Answers.GroupBy(answer => answer.PersonId);

        public Notice Word(IGrouping<Guid, RecallAnswerRow> person, DateTimeOffset now)
        {
            var packets = person.Select(answer => Packets[answer.PacketId]).Distinct().ToArray();
            var codes = string.Join(", ", packets.Select(packet => packet.Code));
            var list = string.Join(", ", packets.Select(packet => packet.Title));
            var reason = string.Join(" ", person.Select(answer => Reasons[answer.HoldId]).Distinct());
            string[] letter =
            [
                Again ? Say[$"The library has told you before that it calls back seed you have or had, and has not heard yet what became of it: {list}."] : Say[$"The library calls back seed that you have or had: {list}."],
                Say[$"Why: {reason}"],
                Say["Until you hear more, please don't save seed from it and don't pass it on. Don't eat fruit that does not match the packet until somebody at the library has seen it. This is nobody's fault."],
                Say["Say on the packet's page what became of it; \"haven't sown it\" is an answer too."],
            ];
            // A recall that was opened again is told again.
            var about = string.Create(CultureInfo.InvariantCulture, $"recall:{person.Min(answer => answer.HoldId)}:{packets[0].Code}:{now.UtcTicks}");
            var address = packets.Length == 1 ? $"/p/{packets[0].Code}" : "/loans";
            return new Notice(NoticeKind.Recall, about, Again ? Say[$"Reminder of a recall: packet {codes}"] : Say[$"Recall: packet {codes}"], Say[$"The library calls this seed back. {reason} Say on the packet’s page what became of it."], address, string.Join("\n\n", letter));
        }
    }
}
