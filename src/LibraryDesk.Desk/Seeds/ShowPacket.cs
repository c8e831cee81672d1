using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A recall as the holder of a packet meets it.</summary>
/// <param name="HoldId">Its number.</param>
/// <param name="RecalledOn">The day.</param>
/// <param name="Reason">Why, in the librarian's words.</param>
/// <param name="MyAnswer">What the reader answered; null when they did not, or do not hold the packet.</param>
public sealed record RecallNotice(long HoldId, DateOnly RecalledOn, string Reason, RecallAnswer? MyAnswer);

/// <summary>What anybody may see of a packet: no borrower, no grower, no donor.</summary>
/// <param name="Packet">The packet; its holder is left out.</param>
/// <param name="Lot">Its lot; the place it is kept is left out.</param>
/// <param name="Name">What it goes by.</param>
/// <param name="HarvestYear">The year it ripened; null when not known.</param>
/// <param name="Holds">What stands against lending it, upstream too.</param>
/// <param name="Recall">The recall it is under; null without one.</param>
/// <param name="Lineage">Everything up and down from it, without people.</param>
/// <param name="Names">Names of the lineage's nodes.</param>
/// <param name="Variety">What the library means by the name; null when nobody wrote it down.</param>
/// <param name="Plants">Plants tied to packets of the lineage that were determined.</param>
/// <param name="MyLoan">The reader's own loan of it, running or last; null without one.</param>
public sealed record PacketView(
    Packet Packet,
    Lot Lot,
    GoesBy Name,
    int? HarvestYear,
    IReadOnlyList<Hold> Holds,
    RecallNotice? Recall,
    SeedState Lineage,
    IReadOnlyDictionary<long, GoesBy> Names,
    VarietyRow? Variety,
    IReadOnlyList<DeterminedPlant> Plants,
    Loan? MyLoan)
{
    /// <summary>Lots made of seed that was grown from this packet and came home, oldest first.</summary>
    public IReadOnlyList<LotCode> CameHomeAs
    {
        get
        {
            var growings = Lineage.GrowOuts.Where(growOut => growOut.From == Packet.Id.Node && !growOut.IsVoid).Select(growOut => growOut.Id.Node).ToHashSet();
            var made = Lineage.Edges.Where(edge => growings.Contains(edge.Parent)).Select(edge => edge.Child).ToHashSet();
            return [.. Lineage.Lots.Where(lot => !lot.IsVoid && made.Contains(lot.Id.Node)).OrderBy(lot => lot.Id.Value).Select(lot => lot.Code)];
        }
    }

    /// <summary>True when it stands free on the shelf and nothing is held against it.</summary>
    public bool CanBeBorrowed => Packet.Standing == PacketStanding.OnShelf && Holds.Count == 0;

    /// <summary>True when a librarian can hand it over: from the shelf, or to who it is kept for.</summary>
    public bool CanBeLent => Packet.Standing is PacketStanding.OnShelf or PacketStanding.Picked && Holds.Count == 0;
}

/// <summary>Reads the public page of a packet, for whoever scans its code.</summary>
public sealed class ShowPacket(IDbContextFactory<LibraryDbContext> factory)
{
    public async Task<Outcome<PacketView>> ReadAsync(Actor actor, string? code, CancellationToken stop)
    {
        if (!PacketCode.TryParse(code, out var read, out var no)) return no;
        var text = read.ToString();
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<PacketRow>().AsNoTracking().SingleOrDefaultAsync(packet => packet.Code == text && packet.Standing != PacketStanding.Void, stop);
        if (row is null) return FindingRefusals.NoPacket(text);

        var state = await LineageSlice.AroundAsync(db, row.Id, stop);
        var names = LineageSlice.Names(state);
        var name = names[row.Id];
        var holds = (await LineageSql.HoldsAbove(db, row.Id).AsNoTracking().ToListAsync(stop)).Select(hold => hold.ToRecord()).Where(hold => hold.Stands).OrderBy(hold => hold.Id.Value).ToArray();
        var mine = actor.UserId is { } me ? state.Loans.Where(loan => loan.Packet.Value == row.Id && loan.Borrower.Value == me && !loan.IsVoid).MaxBy(loan => loan.Id.Value) : null;
        var packet = state.Find(new PacketId(row.Id))!;
        return new PacketView(
            packet with { Holder = null, Loan = null, Request = null, Place = null },
            state.Find(packet.Lot)! with { Place = null },
            name,
            HarvestYear(state, packet.Lot.Node),
            holds,
            await RecallAsync(db, row.Id, holds, actor, stop),
            WithoutPeople(state),
            names,
            await VarietyAsync(db, name, stop),
            await DeterminedPlants.OfAsync(db, state, stop),
            mine);
    }

    private static int? HarvestYear(SeedState state, NodeId lot)
    {
        foreach (var edge in state.Edges.Where(edge => edge.Child == lot).OrderByDescending(edge => edge.Share))
        {
            if (state.Find(new AccessionId(edge.Parent.Value)) is { } accession) return accession.HarvestYear;
            if (state.Lots.FirstOrDefault(made => made.Id.Node == lot) is { Origin: LotOrigin.Harvest } harvested) return (state.Find(new GrowOutId(edge.Parent.Value))?.Facts.HarvestedOn ?? harvested.MadeOn).Year;
            if (HarvestYear(state, edge.Parent) is { } year) return year;
        }
        return null;
    }

    private static async Task<RecallNotice?> RecallAsync(LibraryDbContext db, long packet, IReadOnlyList<Hold> holds, Actor actor, CancellationToken stop)
    {
        var ids = holds.Where(hold => hold.Reason == HoldReason.Recall).Select(hold => hold.Id.Value).ToArray();
        if (ids.Length == 0) return null;
        var recall = await db.Set<RecallRow>().AsNoTracking().Where(r => ids.Contains(r.HoldId)).OrderByDescending(r => r.HoldId).FirstOrDefaultAsync(stop);
        if (recall is null) return null;
        var answer = await db.Set<RecallAnswerRow>().AsNoTracking()
            .Where(a => a.HoldId == recall.HoldId && a.PacketId == packet && a.PersonId == actor.UserId).Select(a => a.Answer).FirstOrDefaultAsync(stop);
        return new(recall.HoldId, recall.RecalledOn, recall.Reason, answer);
    }

    internal static async Task<VarietyRow?> VarietyAsync(LibraryDbContext db, GoesBy name, CancellationToken stop)
    {
        if (name.Variety is null || name.Species is null) return null;
        var normalized = name.Variety.Trim().ToUpperInvariant();
        return await db.Set<VarietyRow>().AsNoTracking().FirstOrDefaultAsync(variety => variety.Species == name.Species && variety.NormalizedName == normalized, stop);
    }

    // The chain is public, the people along it are not.
    internal static SeedState WithoutPeople(SeedState state)
    {
        var bare = new SeedState();
        foreach (var record in state.Accessions) bare.Put(record with { Donor = null });
        foreach (var record in state.Lots) bare.Put(record with { Place = null });
        foreach (var record in state.Packets) bare.Put(record with { Holder = null, Place = null });
        foreach (var record in state.GrowOuts) bare.Put(record with { Grower = null });
        foreach (var record in state.Holds) bare.Put(record);
        foreach (var record in state.Claims) bare.Put(record with { By = null });
        foreach (var record in state.Tests) bare.Put(record);
        foreach (var record in state.Edges) bare.Put(record);
        return bare;
    }
}
