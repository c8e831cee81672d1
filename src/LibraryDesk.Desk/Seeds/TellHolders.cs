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
/// <param name="NoAddress">Packets whose holder has no address here or wants no word from the desk: they are told another way.</param>
public sealed record HoldersTold(int Letters, int NoAddress);

/// <summary>Somebody a recall has to tell.</summary>
/// <param name="Who">Their name.</param>
/// <param name="Packets">The packets, with their names.</param>
/// <param name="Way">How they will be told; null when the desk cannot tell them.</param>
public sealed record HolderToTell(string Who, IReadOnlyList<string> Packets, NoticeWay? Way);

/// <summary>The letters of a recall before they go.</summary>
/// <param name="People">Everybody not told yet.</param>
/// <param name="Subject">Of the first letter, in the reader's language; null without anybody to tell.</param>
/// <param name="Letter">The words of the first letter.</param>
/// <param name="HasAddress">True when the desk's address is set, so that letters can carry the way to the page.</param>
public sealed record LettersToSend(IReadOnlyList<HolderToTell> People, string? Subject, string? Letter, bool HasAddress);

/// <summary>Writes to everybody who holds or held a recalled packet and was not told yet. Letter and note stand or fall together.</summary>
public sealed class TellHolders(IDbContextFactory<LibraryDbContext> factory, TimeProvider clock)
{
    public const string ClosedCode = "recall.closed";

    public Task<Outcome<HoldersTold>> RunAsync(Actor actor, long holdId, CancellationToken stop) => RunAsync(actor, [holdId], stop);

    /// <summary>Writes about several recalls, such as those started together: one word to each person. Those that are closed are left out.</summary>
    public async Task<Outcome<HoldersTold>> RunAsync(Actor actor, IReadOnlyList<long> holdIds, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await UntoldAsync(db, holdIds, stop)).TryGet(out var untold, out var no)) return no;

        var now = clock.GetUtcNow();
        var letters = 0;
        foreach (var person in untold.ByPerson)
        {
            if (!await Notice.TellAsync(db, person.Key, () => untold.Word(person, now), now, stop)) continue;
            foreach (var answer in person) answer.ToldAt = now;
            letters++;
        }

        await db.SaveChangesAsync(stop);
        return new HoldersTold(letters, untold.Answers.Where(answer => answer.ToldAt is null).Select(answer => answer.PacketId).Distinct().Count());
    }

    /// <summary>Who would be written to, and the first of the letters; nothing is written.</summary>
    public async Task<Outcome<LettersToSend>> PreviewAsync(Actor actor, IReadOnlyList<long> holdIds, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await UntoldAsync(db, holdIds, stop)).TryGet(out var untold, out var no)) return no;
        var ids = untold.Answers.Select(answer => answer.PersonId).Distinct().ToArray();
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

        var people = untold.ByPerson.Select(person => new HolderToTell(names[person.Key], [.. person.Select(answer => untold.Packets[answer.PacketId].Title).Distinct()], WayTo(person.Key))).ToArray();
        var first = untold.ByPerson.FirstOrDefault() is { } one ? untold.Word(one, clock.GetUtcNow()) : null;
        var address = await db.Set<LibrarySettingsRow>().AsNoTracking().Select(row => row.PublicAddress).SingleOrDefaultAsync(stop);
        return new LettersToSend(people, first?.Heading, first?.Letter, !string.IsNullOrEmpty(address));
    }

    private static async Task<Outcome<Untold>> UntoldAsync(LibraryDbContext db, IReadOnlyList<long> holdIds, CancellationToken stop)
    {
        var reasons = await db.Set<RecallRow>().AsNoTracking().Where(row => holdIds.Contains(row.HoldId)).ToDictionaryAsync(row => row.HoldId, row => row.Reason, stop);
        if (reasons.Count < holdIds.Distinct().Count()) return FindingRefusals.NoHold;
        var open = await db.Set<HoldRow>().Where(hold => holdIds.Contains(hold.Id) && hold.ReleasedOn == null && !hold.IsVoid).Select(hold => hold.Id).ToListAsync(stop);
        if (open.Count == 0) return new Refusal(ClosedCode, "This recall is closed, so nobody is written to any more.");
        var answers = await db.Set<RecallAnswerRow>().Where(answer => open.Contains(answer.HoldId) && answer.ToldAt == null).OrderBy(answer => answer.PacketId).ToListAsync(stop);
        return new Untold(answers, await NamedPacket.OfAsync(db, [.. answers.Select(answer => answer.PacketId).Distinct()], stop), reasons);
    }

    private sealed record Untold(IReadOnlyList<RecallAnswerRow> Answers, IReadOnlyDictionary<long, NamedPacket> Packets, IReadOnlyDictionary<long, string> Reasons)
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
                Say[$"The library calls back seed that you have or had: {list}."],
                Say[$"Why: {reason}"],
                Say["Until you hear more, please don't save seed from it and don't pass it on. Don't eat fruit that does not match the packet until somebody at the library has seen it. This is nobody's fault."],
                Say["Say on the packet's page what became of it; \"haven't sown it\" is an answer too."],
            ];
            // A recall that was opened again is told again.
            var about = string.Create(CultureInfo.InvariantCulture, $"recall:{person.Min(answer => answer.HoldId)}:{packets[0].Code}:{now.UtcTicks}");
            var address = packets.Length == 1 ? $"/p/{packets[0].Code}" : "/loans";
            return new Notice(NoticeKind.Recall, about, Say[$"Recall: packet {codes}"], Say[$"The library calls this seed back. {reason} Say on the packet’s page what became of it."], address, string.Join("\n\n", letter));
        }
    }
}
