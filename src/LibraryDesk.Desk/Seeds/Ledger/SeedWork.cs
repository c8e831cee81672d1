using LibraryDesk.Data.Seeds;
using LibraryDesk.Data.Settings;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>One act at work: what it loads goes into a slice of the seed's state, and what it appends is chained, applied and written.</summary>
internal sealed class SeedWork(LibraryDbContext db, LedgerHeadRow head, PersonId person, DateTimeOffset now, DateOnly today, CancellationToken stop)
{
    private readonly ChangeWriter _writer = new(db);
    private ChainHead _chain = head.ToHead();

    public LibraryDbContext Db => db;

    public CancellationToken Stop => stop;

    /// <summary>Who acts.</summary>
    public PersonId Person => person;

    public DateTimeOffset Now => now;

    /// <summary>The day it is at the library.</summary>
    public DateOnly Today => today;

    public SeedIds Ids { get; } = new(head.LastSeedId);

    /// <summary>What was loaded, as it stands after the entries appended so far.</summary>
    public SeedState State { get; } = new();

    /// <summary>The acts appended so far, in order.</summary>
    public List<SeedAct> Appended { get; } = [];

    /// <summary>Puts the act into the ledger and its consequences into the tables. Returns the entry's number.</summary>
    public long Append(SeedAct act)
    {
        var entry = Chain.Append(_chain, now, person, act);
        _writer.Write(entry, State.Apply(entry));
        _chain = Chain.HeadAfter(entry);
        Appended.Add(act);
        return entry.Sequence;
    }

    /// <summary>Writes the new end of the chain beside it.</summary>
    public void Close()
    {
        head.Height = _chain.Height;
        head.Hash = _chain.Hash.Hex;
        head.LastSeedId = Ids.Last;
    }

    public async Task<LibrarySettingsRow> SettingsAsync() =>
        await db.Set<LibrarySettingsRow>().AsNoTracking().SingleOrDefaultAsync(stop) ?? new LibrarySettingsRow();

    public async Task<AccessionCode> NextAccessionCodeAsync(int year) => new(year, await NextNumberAsync("A", year));

    public async Task<LotCode> NextLotCodeAsync(int year) => new(year, await NextNumberAsync("L", year));

    /// <summary>The next packet code under the library's letter.</summary>
    public async Task<PacketCode> NextPacketCodeAsync(char letter, int year) => new(letter, year, await NextNumberAsync("P", year));

    /// <summary>Number and code for a lot that is about to be made.</summary>
    public async Task<NewLot> NewLotAsync(DateOnly? madeOn, string? place, long? thousandSeedMilligrams = null)
    {
        var on = madeOn ?? Today;
        return new(Ids.Next<LotId>(), await NextLotCodeAsync(CodeYear(on)), on, thousandSeedMilligrams, string.IsNullOrWhiteSpace(place) ? null : place.Trim());
    }

    /// <summary>The year a code carries. Codes begin at 2000; older seed gets its code from the year it is written down.</summary>
    public int CodeYear(DateOnly on) => on.Year is >= 2000 and <= 2099 ? on.Year : Today.Year;

    public async Task<Outcome<Lot>> LotAsync(string? code)
    {
        if (!LotCode.TryParse(code, out var read, out var no)) return no;
        var text = read.ToString();
        var row = await db.Set<LotRow>().SingleOrDefaultAsync(lot => lot.Code == text && !lot.IsVoid, stop);
        return row is null ? FindingRefusals.NoLot(text) : Keep(row);
    }

    public async Task<Outcome<Accession>> AccessionAsync(string? code)
    {
        if (!AccessionCode.TryParse(code, out var read, out var no)) return no;
        var text = read.ToString();
        var row = await db.Set<AccessionRow>().SingleOrDefaultAsync(accession => accession.Code == text && !accession.IsVoid, stop);
        return row is null ? FindingRefusals.NoAccession(text) : Keep(row);
    }

    /// <summary>A packet with its loan and request.</summary>
    public async Task<Outcome<Packet>> PacketAsync(string? code)
    {
        if (!PacketCode.TryParse(code, out var read, out var no)) return no;
        var text = read.ToString();
        var row = await db.Set<PacketRow>().SingleOrDefaultAsync(packet => packet.Code == text && packet.Standing != PacketStanding.Void, stop);
        if (row is null) return FindingRefusals.NoPacket(text);
        return await KeepAsync(row);
    }

    public async Task<Outcome<Loan>> LoanAsync(long id)
    {
        var row = await db.Set<LoanRow>().SingleOrDefaultAsync(loan => loan.Id == id && !loan.IsVoid, stop);
        if (row is null) return FindingRefusals.NoLoan;
        var packet = await db.Set<PacketRow>().SingleAsync(p => p.Id == row.PacketId, stop);
        await KeepAsync(packet);
        return Keep(row);
    }

    public async Task<Outcome<SeedRequest>> RequestAsync(long id)
    {
        var row = await db.Set<SeedRequestRow>().SingleOrDefaultAsync(request => request.Id == id && !request.IsVoid, stop);
        return row is null ? FindingRefusals.NoRequest : Keep(row);
    }

    public async Task<Outcome<GrowOut>> GrowOutAsync(long id)
    {
        var row = await db.Set<GrowOutRow>().SingleOrDefaultAsync(growOut => growOut.Id == id && !growOut.IsVoid, stop);
        return row is null ? FindingRefusals.NoGrowOut : Keep(row);
    }

    public async Task<Outcome<Hold>> HoldAsync(long id)
    {
        var row = await db.Set<HoldRow>().SingleOrDefaultAsync(hold => hold.Id == id && !hold.IsVoid, stop);
        return row is null ? FindingRefusals.NoHold : Keep(row);
    }

    /// <summary>The lot, accession or packet of a code of any kind.</summary>
    public async Task<Outcome<SeedStock>> StockAsync(string? code) => char.ToUpperInvariant((code ?? "").TrimStart().FirstOrDefault()) switch
    {
        'L' => (await LotAsync(code)).Then<SeedStock>(lot => SeedStock.Of(lot)),
        'A' => (await AccessionAsync(code)).Then<SeedStock>(accession => SeedStock.Of(accession)),
        _ => (await PacketAsync(code)).Then<SeedStock>(packet => SeedStock.Of(packet)),
    };

    /// <summary>Everything of one node: itself, and for a packet its loan, request and growings.</summary>
    public async Task LoadNodeAsync(NodeId node)
    {
        var id = node.Value;
        if (await db.Set<LotRow>().SingleOrDefaultAsync(lot => lot.Id == id, stop) is { } lot) Keep(lot);
        else if (await db.Set<PacketRow>().SingleOrDefaultAsync(packet => packet.Id == id, stop) is { } packet) await KeepAsync(packet);
        else if (await db.Set<AccessionRow>().SingleOrDefaultAsync(accession => accession.Id == id, stop) is { } accession) Keep(accession);
        else if (await db.Set<GrowOutRow>().SingleOrDefaultAsync(growOut => growOut.Id == id, stop) is { } growOut) Keep(growOut);
    }

    /// <summary>Holds on a node and on everything upstream of it, lifted ones too.</summary>
    public async Task<IReadOnlyList<Hold>> HoldsAboveAsync(NodeId node)
    {
        var rows = await LineageSql.HoldsAbove(db, node.Value).OrderBy(hold => hold.Id).ToListAsync(stop);
        return [.. rows.Select(Keep)];
    }

    /// <summary>The slice once more, for a rule that tries something out on it.</summary>
    public SeedState CopyOfState()
    {
        var copy = new SeedState();
        foreach (var record in State.Accessions) copy.Put(record);
        foreach (var record in State.Lots) copy.Put(record);
        foreach (var record in State.Packets) copy.Put(record);
        foreach (var record in State.GrowOuts) copy.Put(record);
        foreach (var record in State.Loans) copy.Put(record);
        foreach (var record in State.Requests) copy.Put(record);
        foreach (var record in State.Holds) copy.Put(record);
        foreach (var record in State.Claims) copy.Put(record);
        foreach (var record in State.Tests) copy.Put(record);
        foreach (var record in State.Transfers) copy.Put(record);
        foreach (var record in State.Edges) copy.Put(record);
        return copy;
    }

    public Accession Keep(AccessionRow row) => Kept(row.ToRecord(), State.Put);

    public Lot Keep(LotRow row) => Kept(row.ToRecord(), State.Put);

    public GrowOut Keep(GrowOutRow row) => Kept(row.ToRecord(), State.Put);

    public Loan Keep(LoanRow row) => Kept(row.ToRecord(), State.Put);

    public SeedRequest Keep(SeedRequestRow row) => Kept(row.ToRecord(), State.Put);

    public Hold Keep(HoldRow row) => Kept(row.ToRecord(), State.Put);

    public NameClaim Keep(NameClaimRow row) => Kept(row.ToRecord(), State.Put);

    public GerminationTest Keep(GerminationTestRow row) => Kept(row.ToRecord(), State.Put);

    public SeedTransfer Keep(SeedTransferRow row) => Kept(row.ToRecord(), State.Put);

    private async Task<Packet> KeepAsync(PacketRow row)
    {
        if (row.LoanId is { } loan) Keep((await db.Set<LoanRow>().FindAsync([loan], stop))!);
        if (row.RequestId is { } request) Keep((await db.Set<SeedRequestRow>().FindAsync([request], stop))!);
        foreach (var growOut in await db.Set<GrowOutRow>().Where(g => g.FromId == row.Id).OrderBy(g => g.Id).ToListAsync(stop)) Keep(growOut);
        return Kept(row.ToRecord(), State.Put);
    }

    private static T Kept<T>(T record, Action<T> put)
    {
        put(record);
        return record;
    }

    private async Task<int> NextNumberAsync(string kind, int year)
    {
        var series = await db.Set<CodeSeriesRow>().FindAsync([kind, year], stop);
        if (series is null) db.Add(series = new CodeSeriesRow { Kind = kind, Year = year });
        return ++series.LastNumber;
    }
}
