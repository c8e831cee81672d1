using System.Globalization;
using LibraryDesk.Data.Notices;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Recalls that were closed.</summary>
/// <param name="Parts">How many; those closed before are not counted.</param>
/// <param name="Told">People who were told that it is over.</param>
/// <param name="StillHeld">Where seed of it stays held by something else: codes of accessions, lots or packets. Not read where it stays held for its name.</param>
public sealed record RecallClosed(int Parts, int Told, IReadOnlyList<string> StillHeld);

/// <summary>Closes recalls: their holds are lifted for one reason, and everybody who was told of them is told of that.</summary>
public sealed class CloseRecall(SeedLedger ledger)
{
    public const string UnansweredCode = "recall.unanswered";

    /// <param name="actor">A librarian.</param>
    /// <param name="holdIds">Their numbers; all are closed, or none.</param>
    /// <param name="why">In words, without anything about a person.</param>
    /// <param name="keepHeld">True when the seed stays held with its name in doubt.</param>
    /// <param name="isSure">True when closing it with answers missing is said to be meant.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<RecallClosed>> RunAsync(Actor actor, IReadOnlyList<long> holdIds, string? why, bool keepHeld, bool isSure, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(holdIds);
        return actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => CloseAsync(work, holdIds, why, keepHeld, isSure), stop)
            : Task.FromResult<Outcome<RecallClosed>>(PeopleRefusals.LibrariansOnly);
    }

    private static async Task<Outcome<RecallClosed>> CloseAsync(SeedWork work, IReadOnlyList<long> holdIds, string? why, bool keepHeld, bool isSure)
    {
        var closing = new List<Released>();
        foreach (var id in holdIds.Distinct())
        {
            if (!(await work.HoldAsync(id)).TryGet(out var hold, out var noHold)) return noHold;
            if (!hold.Stands && holdIds.Count > 1) continue;
            if (!HoldRules.Release(hold, work.Today, why, work.Today).TryGet(out var released, out var no)) return no;
            closing.Add(released);
        }

        if (closing.Count == 0) return FindingRefusals.NoHold;
        var ids = closing.Select(released => released.Hold.Value).ToArray();
        var asked = await work.Db.Set<RecallAnswerRow>().AsNoTracking().Where(row => ids.Contains(row.HoldId)).OrderBy(row => row.PacketId).ToListAsync(work.Stop);
        if (!isSure && Unanswered(await StillAwayAsync(work, asked)) is { } open) return open;
        foreach (var released in closing)
        {
            work.Append(released);
            if (keepHeld) await DoubtAsync(work, released.Node);
        }

        return new RecallClosed(closing.Count, await TellAsync(work, asked, why!.Trim()), keepHeld ? [] : await StillHeldAsync(work, closing));
    }

    private static async Task<IReadOnlyList<string>> StillHeldAsync(SeedWork work, List<Released> closing)
    {
        var ids = closing.Select(released => released.Hold.Value).ToArray();
        var nodes = await LineageSql.HoldsOnSeedOfAny(work.Db, [.. closing.Select(released => released.Node.Value).Distinct()]).AsNoTracking()
            .Where(hold => !ids.Contains(hold.Id) && hold.ReleasedOn == null && !hold.IsVoid).Select(hold => hold.NodeId).Distinct().ToListAsync(work.Stop);
        return [.. (await RecallReach.CodesAsync(work.Db, nodes, work.Stop)).Values.Order(StringComparer.Ordinal)];
    }

    // What came back unopened is on the shelf: nobody has to answer for it.
    private static async Task<List<RecallAnswerRow>> StillAwayAsync(SeedWork work, List<RecallAnswerRow> asked)
    {
        var ids = asked.Select(row => row.PacketId).ToArray();
        var back = (await work.Db.Set<PacketRow>().Where(packet => ids.Contains(packet.Id) && packet.HolderId == null).Select(packet => packet.Id).ToListAsync(work.Stop)).ToHashSet();
        return [.. asked.Where(row => !back.Contains(row.PacketId))];
    }

    private static Refusal? Unanswered(List<RecallAnswerRow> asked)
    {
        var packets = asked.Select(row => row.PacketId).Distinct().Count();
        var missing = asked.Where(row => row.Answer is null).Select(row => row.PacketId).Distinct().Count();
        return missing == 0 ? null : new(UnansweredCode, $"Of {missing} of the {packets} packets that left nobody has answered, so nobody knows where that seed is. Close it all the same?") { MayInsist = true };
    }

    private static async Task DoubtAsync(SeedWork work, NodeId node)
    {
        var own = (await work.HoldsAboveAsync(node)).Where(hold => hold.Node == node).ToArray();
        if (HoldRules.Hold(work.Ids.Next<HoldId>(), node, work.Today, HoldReason.NameInDoubt, own, work.Today, work.Today).TryGet(out var held, out _)) work.Append(held);
    }

    private static async Task<int> TellAsync(SeedWork work, List<RecallAnswerRow> asked, string why)
    {
        var ids = asked.Select(row => row.PacketId).Distinct().ToArray();
        var packets = await NamedPacket.OfAsync(work.Db, ids, work.Stop);
        var told = 0;
        foreach (var person in asked.Where(row => row.ToldAt is not null).GroupBy(row => row.PersonId))
        {
            var theirs = person.Select(row => packets[row.PacketId]).Distinct().ToArray();
            if (await Notice.TellAsync(work.Db, person.Key, () => Word(person.Min(row => row.HoldId), theirs, why, work.Now), work.Now, work.Stop)) told++;
        }

        return told;
    }

    private static Notice Word(long holdId, NamedPacket[] packets, string why, DateTimeOffset now)
    {
        var codes = string.Join(", ", packets.Select(packet => packet.Code));
        var list = string.Join(", ", packets.Select(packet => packet.Title));
        string[] letter =
        [
            Say[$"The library has closed the recall of seed that you have or had: {list}."],
            Say[$"Why: {why}"],
            Say["Whether the seed can be saved and passed on again stands on the page of the packet."],
        ];
        var about = string.Create(CultureInfo.InvariantCulture, $"recall-closed:{holdId}:{packets[0].Code}:{now.UtcTicks}");
        return new Notice(
            NoticeKind.Recall, about, Say[$"Recall closed: packet {codes}"], Say[$"The recall of this seed is closed. {why}"], packets.Length == 1 ? $"/p/{packets[0].Code}" : "/loans", string.Join("\n\n", letter));
    }
}
