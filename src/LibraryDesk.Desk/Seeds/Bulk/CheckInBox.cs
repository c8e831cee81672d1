using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Bulk;

/// <summary>One packet of a box that came back.</summary>
/// <param name="PacketCode">The packet.</param>
/// <param name="Ending">How its loan ends.</param>
/// <param name="Seed">How much seed of a new harvest came with it; null unless it ends with returned seed.</param>
public sealed record BoxLine(string? PacketCode, LoanEnding Ending, Quantity? Seed);

/// <summary>What the library knows of a packet of the box, before anything is written.</summary>
/// <param name="Typed">As typed or scanned.</param>
/// <param name="PacketCode">The packet's code; null when it leads nowhere.</param>
/// <param name="Name">What it goes by.</param>
/// <param name="Borrower">Who has it; null without a running loan.</param>
/// <param name="No">Why it cannot be checked in; null when it can.</param>
/// <param name="IsRecalled">True when an open recall asks what became of it.</param>
public sealed record BoxPacket(string Typed, string? PacketCode, GoesBy Name, string? Borrower, Refusal? No, bool IsRecalled = false);

/// <summary>The box as read.</summary>
/// <param name="Packets">Each packet once, in the order of the box.</param>
/// <param name="Again">Codes that were scanned more than once; they stand in <paramref name="Packets"/> once.</param>
public sealed record BoxRead(IReadOnlyList<BoxPacket> Packets, IReadOnlyList<string> Again)
{
    /// <summary>Packets that can be checked in.</summary>
    public int Ready => Packets.Count(packet => packet.No is null);
}

/// <summary>The box as checked in: lots that were made, in the order of the box.</summary>
public sealed record BoxCheckedIn(int Packets, IReadOnlyList<LotCode> Lots);

/// <summary>Checks a whole box of returns in: all of it in one go, or nothing at all.</summary>
public sealed class CheckInBox(SeedLedger ledger, IDbContextFactory<LibraryDbContext> factory)
{
    public const string EmptyCode = "box.empty";
    public const string TwiceCode = "box.twice";
    public const string NotLentCode = "box.not-lent";
    public const string NoSeedCode = "box.no-seed";

    /// <summary>The most packets of one box.</summary>
    public const int Most = 200;

    /// <summary>Says what each code leads to, without writing anything.</summary>
    public async Task<Outcome<BoxRead>> ReadAsync(Actor actor, IReadOnlyList<string> codes, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(codes);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        if (Size(codes.Count) is { } wrongSize) return wrongSize;
        await using var db = await factory.CreateDbContextAsync(stop);
        // A scanner reads a packet twice as easily as once: what stands there again counts once.
        var scanned = codes.Select(typed => (Typed: typed, Code: PacketCode.Read(typed))).GroupBy(line => line.Code.Match(code => code.ToString(), _ => line.Typed.Trim())).ToArray();
        var read = scanned.Select(line => line.First()).ToArray();
        var known = read.Select(line => line.Code.Match(code => code.ToString(), _ => "")).Where(code => code.Length > 0).Distinct().ToArray();
        var packets = await db.Set<PacketRow>().AsNoTracking().Where(packet => known.Contains(packet.Code) && packet.Standing != PacketStanding.Void).ToDictionaryAsync(packet => packet.Code, stop);
        var names = await LineageNames.OfAsync(db, [.. packets.Values.Select(packet => packet.LotId).Distinct()], stop);
        var people = await PersonNames.OfAsync(db, packets.Values.Select(packet => packet.HolderId), stop);
        var ids = packets.Values.Select(packet => packet.Id).ToArray();
        var recalled = (await ListedPacket.Open(db).Where(listed => ids.Contains(listed.PacketId)).Select(listed => listed.PacketId).ToListAsync(stop)).ToHashSet();
        return new BoxRead([.. read.Select(line =>
        {
            if (!line.Code.TryGet(out var code, out var noCode)) return new BoxPacket(line.Typed, null, GoesBy.NotKnown, null, noCode);
            var text = code.ToString();
            if (!packets.TryGetValue(text, out var packet)) return new(line.Typed, null, GoesBy.NotKnown, null, FindingRefusals.NoPacket(text));
            var no = packet.Standing == PacketStanding.Lent ? null : NotLent(text);
            return new(line.Typed, text, names[packet.LotId], packet.HolderId is { } holder ? people.GetValueOrDefault(holder) : null, no, recalled.Contains(packet.Id));
        })], [.. scanned.Where(line => line.Count() > 1).Select(line => line.Key)]);
    }

    /// <summary>Checks all of it in, or nothing: the refusal names the packet.</summary>
    public Task<Outcome<BoxCheckedIn>> RunAsync(Actor actor, IReadOnlyList<BoxLine> lines, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(lines);
        if (!actor.IsLibrarian) return Task.FromResult<Outcome<BoxCheckedIn>>(PeopleRefusals.LibrariansOnly);
        return Size(lines.Count) is { } wrongSize ? Task.FromResult<Outcome<BoxCheckedIn>>(wrongSize) : ledger.RecordAsync(actor, work => CheckInAsync(work, actor, lines), stop);
    }

    private static async Task<Outcome<BoxCheckedIn>> CheckInAsync(SeedWork work, Actor actor, IReadOnlyList<BoxLine> lines)
    {
        var lots = new List<LotCode>();
        var seen = new HashSet<PacketId>();
        foreach (var line in lines)
        {
            if (!(await work.PacketAsync(line.PacketCode)).TryGet(out var packet, out var noPacket)) return Nothing(line, noPacket);
            var code = packet.Code.ToString();
            if (!seen.Add(packet.Id)) return Nothing(line, Twice(code));
            if (packet.Loan is not { } id || work.State.Find(id) is not { IsOpen: true } loan) return Nothing(line, NotLent(code));
            if (line.Ending != LoanEnding.ReturnedSeed)
            {
                if (!LendingRules.End(loan, packet, line.Ending, work.Today, work.Today).TryGet(out var ended, out var noEnd)) return Nothing(line, noEnd);
                work.Append(ended);
                continue;
            }

            if (line.Seed is not { } seed) return Nothing(line, new Refusal(NoSeedCode, "Say how much seed came back."));
            if (!(await ReturnSeed.TakeBackAsync(work, actor, new SeedReturn(code, null, GrowOutFacts.NotTold, seed))).TryGet(out var returned, out var noReturn)) return Nothing(line, noReturn);
            if (returned.Lot is { } lot) lots.Add(lot);
        }

        return new BoxCheckedIn(lines.Count, lots);
    }

    private static Refusal Nothing(BoxLine line, Refusal no) => new(no.Code, $"Packet {line.PacketCode}: {no.Words} Nothing of the box was written.");

    private static Refusal? Size(int count) => count is 0 or > Most ? new Refusal(EmptyCode, $"Scan or type the packets of the box, one a line, at most {Most}.") : null;

    private static Refusal Twice(string code) => new(TwiceCode, $"Packet {code} stands in the box twice. Take one of the two out.");

    private static Refusal NotLent(string code) => new(NotLentCode, $"Packet {code} is not on loan, so there is no loan to end. Seed grown from it without a loan is taken in as a return of its own.");
}
