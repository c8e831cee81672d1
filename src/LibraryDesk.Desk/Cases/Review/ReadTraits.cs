using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>What the traits of a case say at this moment, for a decision.</summary>
/// <param name="OddsJson">The ranking as the determination keeps it, see <see cref="OddsThen"/>.</param>
/// <param name="Origins">Packets the origin clues lead to, with the names their lots claim.</param>
internal sealed record TraitsRead(TraitsSay Traits, string OddsJson, IReadOnlyList<OriginOfCase> Origins);

/// <summary>Reads the ranking of a case inside its turn.</summary>
public sealed class ReadTraits(RankCase rank)
{
    internal async Task<TraitsRead> SayAsync(CaseInHand hand, CancellationToken stop)
    {
        var read = await rank.ReadAsWrittenAsync(hand.Db, hand.Case, stop);
        return new TraitsRead(Say(read), OddsThen.Of(read.Ranking).ToJson(), Origins(read));
    }

    private static IReadOnlyList<OriginOfCase> Origins(CaseRanking read)
    {
        var fits = read.Ranking.Packets.ToDictionary(packet => packet.Id, packet => packet.Fit);
        return [.. read.Packets.Where(packet => fits.ContainsKey(packet.Code))
            .Select(packet => new OriginOfCase(packet.Code, packet.Species, packet.Variety is { } name ? [name] : [], fits[packet.Code], packet.IsTied))];
    }

    /// <summary>A trait decides against a candidate when it weighs 20 decibans or more for the leader and against it.</summary>
    internal static TraitsSay Say(CaseRanking read)
    {
        var against = new Dictionary<string, IReadOnlyList<string>>();
        foreach (var candidate in read.Ranking.Candidates.Skip(1))
        {
            var reasons = ReasonFinder.Between(read.Guide, read.Evidence, read.Prior, candidate.Id, read.Leader.Id)!.Reasons;
            var deciding = reasons.Where(r => r.Decibans < 0 && r.Word == ReasonWord.Decides).Select(r => r.Name).ToList();
            if (deciding.Count > 0) against[candidate.Id] = deciding;
        }
        return new TraitsSay(read.Ranking.Candidates.ToDictionary(c => c.Id, c => c.Probability), against);
    }
}
