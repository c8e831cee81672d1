using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Desk.Varieties;

/// <summary>How well the plant of a case goes with names. It determines nothing: many varieties look alike.</summary>
/// <param name="CaseId">The case.</param>
/// <param name="Title">What its owner calls it.</param>
/// <param name="ByName">How well each name fits; names without a species that the case's guide knows are left out.</param>
public sealed record VarietyFits(long CaseId, string Title, IReadOnlyDictionary<GoesBy, Fit> ByName);

/// <summary>Says which names would fit a case, by the traits seen so far and what the library means by the names.</summary>
public sealed class FitVarieties(IDbContextFactory<LibraryDbContext> factory, RankCase rank)
{
    /// <param name="actor">Somebody who may see the odds of the case.</param>
    /// <param name="caseId">The case.</param>
    /// <param name="names">The names in question; each once.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<VarietyFits>> OfAsync(Actor actor, long caseId, IReadOnlyCollection<GoesBy> names, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(names);
        if (!(await rank.ForAsync(actor, caseId, stop)).TryGet(out var ranking, out var no)) return no;
        await using var db = await factory.CreateDbContextAsync(stop);
        var title = await db.Set<Data.Cases.CaseRow>().Where(row => row.Id == caseId).Select(row => row.Title).SingleAsync(stop);
        var known = names.Where(name => name.Species is { } species && ranking.Guide.Guide.FindCandidate(species) is not null).Distinct().ToArray();
        if (known.Length == 0 || ranking.Evidence.Answers.Count == 0) return new VarietyFits(caseId, title, new Dictionary<GoesBy, Fit>());
        var normalized = known.Select(name => name.Variety?.Trim().ToUpperInvariant()).OfType<string>().Distinct().ToArray();
        var traits = await db.Set<VarietyRow>().Where(row => normalized.Contains(row.NormalizedName)).Select(row => new { row.Species, row.NormalizedName, row.Traits })
            .ToDictionaryAsync(row => (row.Species, row.NormalizedName), row => row.Traits, stop);
        var packets = known.Select((name, place) => new PossiblePacket(
            place.ToString(System.Globalization.CultureInfo.InvariantCulture), 1, [new TaxonShare(name.Species!, null, 1)],
            CaseOrigin.OwnTraits(ranking.Guide.Guide, name.Variety is { } variety ? traits.GetValueOrDefault((name.Species!, variety.Trim().ToUpperInvariant()), "") : ""))).ToArray();
        var ranked = Ranker.Rank(ranking.Guide, ranking.Evidence, Prior.OfGuide with { Origin = new Origin(0.5, packets) }).Packets.ToDictionary(packet => packet.Id, packet => packet.Fit);
        return new VarietyFits(caseId, title, known.Select((name, place) => (name, place)).ToDictionary(pair => pair.name, pair => ranked[pair.place.ToString(System.Globalization.CultureInfo.InvariantCulture)]));
    }
}
