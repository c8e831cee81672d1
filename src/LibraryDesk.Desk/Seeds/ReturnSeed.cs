using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Seed that comes home.</summary>
/// <param name="PacketCode">The packet it was grown from, on loan or not.</param>
/// <param name="SownOn">The day of sowing; null where it is not told: the day the packet left stands for it, as the earliest it can be.</param>
/// <param name="Facts">What the grower tells.</param>
/// <param name="Seed">How much.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="StakeStayed">True when the label stayed with the plants all season; false holds the new lot until somebody has looked at its name.</param>
/// <param name="ReturnedOn">The day; null for today.</param>
/// <param name="Place">Where it is put; null when not said.</param>
/// <param name="ById">Who brings it; null for the borrower, or the actor where there is no loan.</param>
/// <param name="MakesLot">True to make a lot of it in the same go; only a librarian leaves it for later.</param>
/// <param name="IsSure">True when more seed of a packet that came back before, or more than plants give, is said to be meant.</param>
public sealed record SeedReturn(
    string? PacketCode,
    DateOnly? SownOn,
    GrowOutFacts Facts,
    Quantity Seed,
    long? ThousandSeedMilligrams = null,
    bool StakeStayed = true,
    DateOnly? ReturnedOn = null,
    string? Place = null,
    Guid? ById = null,
    bool MakesLot = true,
    bool IsSure = false);

/// <summary>Seed that came home, as a lot of its own.</summary>
/// <param name="GrowOut">The growing it came of.</param>
/// <param name="Lot">The new lot; null when it is made later.</param>
/// <param name="IsHeld">True when it waits until a librarian has looked at it.</param>
public sealed record SeedReturned(GrowOutId GrowOut, LotCode? Lot, bool IsHeld);

/// <summary>Takes seed back: the growing, the return, the new lot with its parent, the grower's word for the name, and the hold it waits under, in one go.</summary>
public sealed class ReturnSeed(SeedLedger ledger)
{
    public const string TakenBeforeCode = "return.taken-before";

    /// <summary>Why the earlier answers on a growing are corrected, as the ledger keeps it.</summary>
    public const string ToldAnew = "told anew when the seed came back";

    public Task<Outcome<SeedReturned>> RunAsync(Actor actor, SeedReturn brought, CancellationToken stop) =>
        actor.IsSignedIn
            ? ledger.RecordAsync(actor, work => TakeBackAsync(work, actor, brought), stop)
            : Task.FromResult<Outcome<SeedReturned>>(PeopleRefusals.SignInFirst);

    /// <summary>Takes seed back within an act that is at work.</summary>
    internal static async Task<Outcome<SeedReturned>> TakeBackAsync(SeedWork work, Actor actor, SeedReturn brought)
    {
        if (!(await work.PacketAsync(brought.PacketCode)).TryGet(out var packet, out var noPacket)) return noPacket;
        var loan = packet.Loan is { } id ? work.State.Find(id) : null;
        if (!actor.IsLibrarian && loan?.Borrower != work.Person) return PeopleRefusals.NotYours;
        var by = brought.ById is { } named && actor.IsLibrarian ? new PersonId(named) : loan?.Borrower ?? work.Person;
        var on = brought.ReturnedOn ?? work.Today;

        if (!brought.IsSure && await TakenBeforeAsync(work, packet) is { } before) return before;
        if (!(await GrowingAsync(work, packet, loan, by, brought)).TryGet(out var growOut, out var noGrowing)) return noGrowing;
        if (!GrowingRules.Return(growOut, growOut.Loan is null ? null : loan, by, on, brought.Seed, brought.ThousandSeedMilligrams, work.Today, brought.IsSure).TryGet(out var returned, out var noReturn)) return noReturn;
        work.Append(returned);

        if (!brought.MakesLot && actor.IsLibrarian) return new SeedReturned(growOut.Id, null, false);
        await work.LoadNodeAsync(packet.Lot.Node);
        var parent = work.State.Find(packet.Lot)!;
        var wanted = await work.NewLotAsync(on, brought.Place, brought.ThousandSeedMilligrams);
        var taking = new LotTaking(SeedStock.Of(work.State.Find(growOut.Id)!), parent.Species, null, []);
        if (!LotRules.FromHarvest(wanted, taking, work.Today).TryGet(out var made, out var noLot)) return noLot;
        work.Append(made);

        await ClaimAsync(work, wanted.Lot, parent, by, on, brought.StakeStayed);
        return new SeedReturned(growOut.Id, wanted.Code, await HoldAsync(work, actor, wanted.Lot, on, brought.StakeStayed));
    }

    // The same bag handed in from two windows, or entered by two people, would stand in two drawers.
    private static async Task<Refusal?> TakenBeforeAsync(SeedWork work, Packet packet)
    {
        var growings = work.State.GrowOuts.Where(growOut => growOut.From == packet.Id.Node && !growOut.IsVoid && growOut.Harvest is { IsEmpty: false }).Select(growOut => growOut.Id.Value).ToArray();
        if (growings.Length == 0) return null;
        var made = await work.Db.Set<LineageEdgeRow>().AsNoTracking().Where(edge => growings.Contains(edge.ParentId))
            .Join(work.Db.Set<LotRow>().Where(lot => !lot.IsVoid), edge => edge.ChildId, lot => lot.Id, (edge, lot) => lot).OrderByDescending(lot => lot.Id).FirstOrDefaultAsync(work.Stop);
        return made is null ? null : new Refusal(TakenBeforeCode, $"Seed of packet {packet.Code} was taken back before and is lot {made.Code}. If this is more of it, say so; if it is the same seed, nothing is left to do.") { MayInsist = true };
    }

    // The growing may have been taken down before the harvest; then what the grower tells now is said instead.
    private static async Task<Outcome<GrowOut>> GrowingAsync(SeedWork work, Packet packet, Loan? loan, PersonId by, SeedReturn brought)
    {
        var known = work.State.GrowOuts.Where(growOut => growOut.From == packet.Id.Node && !growOut.IsVoid).MaxBy(growOut => growOut.Id.Value);
        var open = loan is { IsOpen: true } ? loan : null;
        if (known is null)
        {
            var sownOn = brought.SownOn ?? open?.LentOn ?? packet.PackedOn;
            var told = brought.SownOn is null ? brought.Facts with { SownLater = true } : brought.Facts;
            var sowing = GrowingRules.SowPacket(work.Ids.Next<GrowOutId>(), packet, open, by, sownOn, told, work.Today);
            if (!sowing.TryGet(out var grown, out var no)) return no;
            work.Append(grown);
            return work.State.Find(grown.GrowOut)!;
        }
        // Nothing new is told, as of a packet in a box: what was told before stands.
        if (brought.Facts == GrowOutFacts.NotTold && brought.SownOn is null) return known;
        var facts = brought.Facts with { SownLater = brought.SownOn is null ? known.Facts.SownLater : null };
        if (known.Facts == facts && (brought.SownOn ?? known.SownOn) == known.SownOn) return known;

        var kind = SeedActJson.NameOf(EntryKind.GrownOut);
        var id = known.Id.Value;
        var entry = await work.Db.Set<LedgerEntryRow>().AsNoTracking()
            .Where(row => row.Kind == kind && work.Db.Set<LedgerSubjectRow>().Any(subject => subject.NodeId == id && subject.Sequence == row.Sequence))
            .OrderBy(row => row.Sequence).FirstAsync(work.Stop);
        var instead = new GrownOut(known.Id, known.From, known.Loan, known.Grower ?? by, brought.SownOn ?? known.SownOn, known.Sown, facts);
        if (GrowingRules.Facts(facts, instead.SownOn, work.Today) is { } wrong) return wrong;
        if (instead.SownOn < packet.PackedOn) return new Refusal(SeedRefusals.BeforeParentCode, "The packet was put up later than that day. Check the day of sowing.");
        var correction = await CorrectEntry.CorrectAsync(work, await LatestWordAsync(work, entry.Sequence, id), instead, ToldAnew);
        return correction.Then<GrowOut>(_ => work.State.Find(known.Id)!);
    }

    // A growing that was said again before is corrected where it was last said.
    private static async Task<long> LatestWordAsync(SeedWork work, long first, long growOut)
    {
        var kind = SeedActJson.NameOf(EntryKind.Corrected);
        var corrections = await work.Db.Set<LedgerEntryRow>().AsNoTracking()
            .Where(row => row.Kind == kind && row.Sequence > first && work.Db.Set<LedgerSubjectRow>().Any(subject => subject.NodeId == growOut && subject.Sequence == row.Sequence))
            .OrderBy(row => row.Sequence).ToListAsync(work.Stop);
        var last = first;
        foreach (var row in corrections)
        {
            if (row.ToEntry()?.ReadAct() is Corrected corrected && corrected.Entry == last) last = row.Sequence;
        }
        return last;
    }

    private static async Task ClaimAsync(SeedWork work, LotId lot, Lot parent, PersonId by, DateOnly on, bool stakeStayed)
    {
        if (!stakeStayed) return;
        var name = (await LineageNames.OfAsync(work.Db, [parent.Id.Value], work.Stop))[parent.Id.Value];
        if (name.Variety is null || name.OthersToo) return;
        var claim = new Named(work.Ids.Next<ClaimId>(), lot.Node, name.Species ?? parent.Species, name.Variety, ClaimGrounds.GrowersWord, by, on, null);
        if (NamingRules.Claim(claim, on, new HashSet<NodeId>(), work.Today).TryGet(out var allowed, out _)) work.Append(allowed);
    }

    private static async Task<bool> HoldAsync(SeedWork work, Actor actor, LotId lot, DateOnly on, bool stakeStayed)
    {
        // What a member hands in waits until a librarian has seen it; so does everything where the library wants an intake hold.
        var intake = !actor.IsLibrarian || (await work.SettingsAsync()).IntakeHoldDays > 0;
        if (intake) work.Append(new Held(work.Ids.Next<HoldId>(), lot.Node, HoldReason.IntakeQuarantine, on));
        if (!stakeStayed) work.Append(new Held(work.Ids.Next<HoldId>(), lot.Node, HoldReason.NameInDoubt, on));
        return intake || !stakeStayed;
    }
}
