using System.Globalization;
using LibraryDesk.Data.Notices;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Seeds.Ledger;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What became of the letters of a recall.</summary>
/// <param name="Letters">People told, by letter or in the app, as each chose.</param>
/// <param name="NoAddress">Packets whose holder has no address here or wants no word from the desk: they are told another way.</param>
public sealed record HoldersTold(int Letters, int NoAddress);

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
        var recalls = await db.Set<RecallRow>().AsNoTracking().Where(row => holdIds.Contains(row.HoldId)).ToDictionaryAsync(row => row.HoldId, stop);
        if (recalls.Count < holdIds.Distinct().Count()) return FindingRefusals.NoHold;
        var open = await db.Set<HoldRow>().Where(hold => holdIds.Contains(hold.Id) && hold.ReleasedOn == null && !hold.IsVoid).Select(hold => hold.Id).ToListAsync(stop);
        if (open.Count == 0) return new Refusal(ClosedCode, "This recall is closed, so nobody is written to any more.");
        var untold = await db.Set<RecallAnswerRow>().Where(answer => open.Contains(answer.HoldId) && answer.ToldAt == null).OrderBy(answer => answer.PacketId).ToListAsync(stop);
        var packets = untold.Select(answer => answer.PacketId).ToArray();
        var codes = await db.Set<PacketRow>().Where(packet => packets.Contains(packet.Id)).ToDictionaryAsync(packet => packet.Id, packet => packet.Code, stop);

        var now = clock.GetUtcNow();
        var letters = 0;
        foreach (var person in untold.GroupBy(answer => answer.PersonId))
        {
            var held = person.Select(answer => codes[answer.PacketId]).Distinct().ToArray();
            var reasons = string.Join(" ", person.Select(answer => recalls[answer.HoldId].Reason).Distinct());
            if (!await Notice.TellAsync(db, person.Key, () => Word(person.Min(answer => answer.HoldId), held, reasons), now, stop)) continue;
            foreach (var answer in person) answer.ToldAt = now;
            letters++;
        }

        await db.SaveChangesAsync(stop);
        return new HoldersTold(letters, untold.Where(answer => answer.ToldAt is null).Select(answer => answer.PacketId).Distinct().Count());
    }

    private static Notice Word(long holdId, string[] packets, string reason)
    {
        var list = string.Join(", ", packets);
        string[] letter =
        [
            Say[$"The library calls back seed that you have or had: {list}."],
            Say[$"Why: {reason}"],
            Say["Until you hear more, please don't save seed from it and don't pass it on. Don't eat fruit that does not match the packet until somebody at the library has seen it. This is nobody's fault."],
            Say["Say on the packet's page what became of it; \"haven't sown it\" is an answer too."],
        ];
        // The numbers of the packets are part of it: a packet lent later is word of its own.
        var about = string.Create(CultureInfo.InvariantCulture, $"recall:{holdId}:{packets[0]}");
        var address = packets.Length == 1 ? $"/p/{packets[0]}" : "/loans";
        return new Notice(NoticeKind.Recall, about, Say[$"Recall: packet {list}"], Say[$"The library calls this seed back. {reason} Say on the packet’s page what became of it."], address, string.Join("\n\n", letter));
    }
}
