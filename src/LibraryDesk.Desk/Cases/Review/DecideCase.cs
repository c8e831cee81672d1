using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Settings;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Applies the case rules to a case in hand, and writes the determination when they say so.</summary>
public sealed class DecideCase(ReadTraits traits)
{
    internal async Task<Outcome<CaseDecision>> InAsync(
        CaseInHand hand, IReadOnlyList<OpinionRow> opinions, DateTimeOffset now, CancellationToken stop)
    {
        var needed = await hand.Db.Set<LibrarySettingsRow>().Select(s => (int?)s.OpinionsNeeded).SingleOrDefaultAsync(stop)
            ?? new LibrarySettingsRow().OpinionsNeeded;
        var said = await traits.SayAsync(hand, stop);

        var decision = CaseRules.Decide([.. opinions.Select(InHand)], needed, said.Traits);
        if (decision is AnotherWanted wanted) hand.Tell(ReviewEvents.OpinionWanted, null, ReviewWords.Number(wanted.Number), now);
        if (decision is not Determined determined) return decision;
        var made = DeterminationRules.ByOrigin(determined.Taxon, hand.Guide.Guide, said.Origins);
        // The rules that guard a variety hold on every way to a determination, this one too.
        if (DeterminationRules.Check(made, hand.Guide.Guide, said.Origins) is { } no) return no;

        var grounds = determined.Grounds with { PacketCode = made.VarietyName is null ? null : made.PacketCode };
        await WriteAsync(hand, new Decided(made.Taxon, grounds.ToJson(), said.OddsJson, made.VarietyName, made.PacketCode), now, stop);
        return decision;
    }

    internal static async Task<DeterminationRow> WriteAsync(CaseInHand hand, Decided decided, DateTimeOffset now, CancellationToken stop)
    {
        var row = new DeterminationRow
        {
            CaseId = hand.Case.Id,
            Round = hand.Case.Round,
            Taxon = decided.Taxon.Taxon,
            Qualifier = decided.Taxon.Qualifier,
            VarietyName = decided.VarietyName,
            OriginPacketCode = decided.Origin,
            AloneById = decided.AloneById,
            Grounds = decided.Grounds,
            GuideId = hand.Guide.Guide.Id,
            GuideVersion = hand.Guide.Guide.Version,
            OddsJson = decided.OddsJson,
            At = now,
        };
        hand.Db.Add(row);
        hand.MoveTo(CaseState.Determined, now);
        hand.Tell(ReviewEvents.Determined, decided.AloneById, $"{decided.Taxon.Qualifier} {decided.Taxon.Taxon}".Trim(), now);
        foreach (var request in await hand.OpenRequestsAsync(stop)) request.WithdrawnAt = now;
        await CaseOwner.AskedIsOverAsync(hand.Db, hand.Case, now, stop);
        await CaseLetters.DeterminedAsync(hand, row, now, stop);
        return row;
    }

    internal static OpinionInHand InHand(OpinionRow row) => new(
        new NamedTaxon(row.SealedTaxon, row.SealedQualifier),
        row.FinalTaxon is null ? null : new NamedTaxon(row.FinalTaxon, row.FinalQualifier ?? Qualifiers.None));
}

/// <summary>A determination about to be written.</summary>
/// <param name="Origin">Packet code that gives the variety; null without one.</param>
internal sealed record Decided(
    NamedTaxon Taxon, string Grounds, string OddsJson, string? VarietyName = null, string? Origin = null, Guid? AloneById = null);
