using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Seeds.Ledger;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What became of the letters of a recall.</summary>
/// <param name="Letters">Letters put in the post, one a person.</param>
/// <param name="NoAddress">Packets whose holder has no address here: they are told another way.</param>
public sealed record HoldersTold(int Letters, int NoAddress);

/// <summary>Writes to everybody who holds or held a recalled packet and was not told yet. Letter and note stand or fall together.</summary>
public sealed class TellHolders(IDbContextFactory<LibraryDbContext> factory, TimeProvider clock)
{
    public const string ClosedCode = "recall.closed";

    public async Task<Outcome<HoldersTold>> RunAsync(Actor actor, long holdId, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var recall = await db.Set<RecallRow>().AsNoTracking().SingleOrDefaultAsync(row => row.HoldId == holdId, stop);
        if (recall is null) return FindingRefusals.NoHold;
        if (await db.Set<HoldRow>().AnyAsync(hold => hold.Id == holdId && (hold.ReleasedOn != null || hold.IsVoid), stop)) return new Refusal(ClosedCode, "This recall is closed, so nobody is written to any more.");
        var untold = await db.Set<RecallAnswerRow>().Where(answer => answer.HoldId == holdId && answer.ToldAt == null).OrderBy(answer => answer.PacketId).ToListAsync(stop);
        var people = untold.Select(answer => answer.PersonId).Distinct().ToArray();
        var addresses = await db.Users.Where(user => people.Contains(user.Id) && user.ErasedAt == null && user.Email != null).ToDictionaryAsync(user => user.Id, user => user.Email!, stop);
        var packets = untold.Select(answer => answer.PacketId).ToArray();
        var codes = await db.Set<PacketRow>().Where(packet => packets.Contains(packet.Id)).ToDictionaryAsync(packet => packet.Id, packet => packet.Code, stop);
        var library = await db.Set<LibrarySettingsRow>().AsNoTracking().SingleOrDefaultAsync(stop) ?? new LibrarySettingsRow();

        var now = clock.GetUtcNow();
        var letters = 0;
        foreach (var person in untold.GroupBy(answer => answer.PersonId).Where(person => addresses.ContainsKey(person.Key)))
        {
            var held = person.Select(answer => codes[answer.PacketId]).ToArray();
            db.Add(new OutgoingMailRow { To = addresses[person.Key], Subject = $"Recall: packet {string.Join(", ", held)}", Body = Letter(held, recall.Reason, library), CreatedAt = now, DueAt = now });
            foreach (var answer in person) answer.ToldAt = now;
            letters++;
        }

        await db.SaveChangesAsync(stop);
        return new HoldersTold(letters, untold.Count(answer => answer.ToldAt is null));
    }

    private static string Letter(IReadOnlyList<string> packets, string reason, LibrarySettingsRow library)
    {
        var pages = library.PublicAddress.Length == 0
            ? "Scan the code on the packet or stake, sign in, and say there what became of it; \"haven't sown it\" is an answer too."
            : "Say there what became of it; \"haven't sown it\" is an answer too:\n" + string.Join('\n', packets.Select(code => $"{library.PublicAddress.TrimEnd('/')}/p/{code}"));
        return $"""
            The library calls back seed that you have or had: {string.Join(", ", packets)}.

            Why: {reason}

            Until you hear more, please don't save seed from it and don't pass it on. Don't eat fruit that does not match the packet until somebody at the library has seen it. This is nobody's fault.

            {pages}

            {library.Name}

            """;
    }
}
