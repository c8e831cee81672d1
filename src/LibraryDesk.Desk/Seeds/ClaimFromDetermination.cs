using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Turns the determination of a case into a name claim for the lot its plant came from.</summary>
public sealed class ClaimFromDetermination(SeedLedger ledger)
{
    public const string NoDeterminationCode = "naming.no-determination";
    public const string ClaimedAlreadyCode = "naming.claimed-already";
    public const string NoOriginCode = "naming.no-origin";
    public const string QualifiedCode = "naming.qualified";
    public const string GrewFromItCode = "naming.grew-from-it";
    public const string OtherSpeciesCode = "naming.other-species";

    /// <param name="actor">A librarian.</param>
    /// <param name="caseId">The case; its standing determination is taken.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<ClaimId>> RunAsync(Actor actor, long caseId, CancellationToken stop) => RunAsync(actor, caseId, null, false, stop);

    /// <param name="actor">A librarian.</param>
    /// <param name="caseId">The case; its standing determination is taken.</param>
    /// <param name="lotCode">The lot it is claimed for, where no packet ties the plant to one: then the species alone is claimed, which looks can settle. Null to take the packet's lot.</param>
    /// <param name="grewFromIt">True when the librarian says that the plant grew from seed of that lot; only looked at with <paramref name="lotCode"/>.</param>
    /// <param name="stop">Stops.</param>
    public Task<Outcome<ClaimId>> RunAsync(Actor actor, long caseId, string? lotCode, bool grewFromIt, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => ClaimAsync(work, caseId, lotCode, grewFromIt), stop)
            : Task.FromResult<Outcome<ClaimId>>(PeopleRefusals.LibrariansOnly);

    private static async Task<Outcome<ClaimId>> ClaimAsync(SeedWork work, long caseId, string? lotCode, bool grewFromIt)
    {
        var determination = await work.Db.Set<DeterminationRow>()
            .Where(d => d.CaseId == caseId && d.SupersededAt == null).OrderByDescending(d => d.Round).FirstOrDefaultAsync(work.Stop);
        if (determination is null) return new Refusal(NoDeterminationCode, "This case has no determination that stands. Determine it first.");
        if (determination.ClaimSequence is not null) return new Refusal(ClaimedAlreadyCode, "This determination is a name claim already.");
        if (determination.Qualifier.Length > 0) return new Refusal(QualifiedCode, "A determination with cf. or aff. is not sure enough to name seed by.");
        if (determination.OriginPacketCode is null && lotCode is not null) return await ClaimSpeciesAsync(work, determination, lotCode, grewFromIt);
        if (determination.OriginPacketCode is null) return new Refusal(NoOriginCode, "Nothing ties this plant to a lot. Add the packet it came from as an origin clue first.");
        if (!(await work.PacketAsync(determination.OriginPacketCode)).TryGet(out var packet, out var noPacket)) return noPacket;
        await work.LoadNodeAsync(packet.Lot.Node);
        var lot = work.State.Find(packet.Lot)!;
        var tied = await work.Db.Set<OriginClueRow>().AnyAsync(clue =>
            clue.CaseId == caseId && clue.PacketCode == determination.OriginPacketCode && clue.Tied && clue.TakenBackAt == null, work.Stop);

        // The desk's own rule let a variety through only where no trait contradicts it.
        var evidence = new DeskEvidence(
            caseId.ToString(CultureInfo.InvariantCulture), tied ? OriginLink.PacketCode : OriginLink.Loan, packet.Id.Node, true,
            $"{determination.GuideId} {determination.GuideVersion}");
        var claim = new Named(work.Ids.Next<ClaimId>(), lot.Id.Node, determination.Taxon, determination.VarietyName, ClaimGrounds.DeskDetermination, work.Person, work.Today, evidence);
        if (!NamingRules.Claim(claim, lot.MadeOn, new HashSet<NodeId> { lot.Id.Node, packet.Id.Node }, work.Today).TryGet(out var allowed, out var no)) return no;

        determination.ClaimSequence = work.Append(allowed);
        return allowed.Claim;
    }

    private static async Task<Outcome<ClaimId>> ClaimSpeciesAsync(SeedWork work, DeterminationRow determination, string lotCode, bool grewFromIt)
    {
        if (!(await work.LotAsync(lotCode)).TryGet(out var lot, out var noLot)) return noLot;
        if (!grewFromIt) return new Refusal(GrewFromItCode, "The claim rests on the plant having grown from seed of that lot. Say that it did, or leave it.");
        var stands = (await LineageNames.OfAsync(work.Db, [lot.Id.Value], work.Stop))[lot.Id.Value].Species;
        if (stands is not null && stands != determination.Taxon)
            return new Refusal(OtherSpeciesCode, $"Lot {lot.Code} is on record as another species. If this plant did grow from it, its name is in doubt: hold the lot, and add the packet to the case as an origin clue, so that the mix-up can be found.");
        var evidence = new DeskEvidence(determination.CaseId.ToString(CultureInfo.InvariantCulture), null, null, true, $"{determination.GuideId} {determination.GuideVersion}");
        var claim = new Named(work.Ids.Next<ClaimId>(), lot.Id.Node, determination.Taxon, null, ClaimGrounds.DeskDetermination, work.Person, work.Today, evidence);
        if (!NamingRules.Claim(claim, lot.MadeOn, new HashSet<NodeId>(), work.Today).TryGet(out var allowed, out var no)) return no;

        determination.ClaimSequence = work.Append(allowed);
        return allowed.Claim;
    }
}
