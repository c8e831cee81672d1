using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;

namespace LibraryDesk.Desk.Seeds.Population;

/// <summary>Something else that stood at the same place.</summary>
/// <param name="FromCode">The packet or lot it was sown from.</param>
/// <param name="Name">What that goes by.</param>
/// <param name="SownOn">The day of sowing, or the earliest it can be.</param>
/// <param name="SownLater">True when that day is only the earliest it can be.</param>
/// <param name="SameSpecies">True when it is of the same species, so that it can cross.</param>
/// <param name="Overlap">True when both stood at the same time; null when the beginning or the end of either was not told.</param>
public sealed record Neighbour(string FromCode, GoesBy Name, DateOnly SownOn, bool SownLater, bool SameSpecies, bool? Overlap);

/// <summary>What grew beside each growing, by its number.</summary>
public sealed record Neighbours(IReadOnlyDictionary<long, IReadOnlyList<Neighbour>> ByGrowOut);

/// <summary>
/// Finds what the same grower grew for seed in the same season: the ledger knows growers, not gardens, so one grower counts as one place.
/// For librarians, who see people.
/// </summary>
public sealed class GrownBeside(IDbContextFactory<LibraryDbContext> factory)
{
    // Seed of one season: sown no more than so many days apart, unless harvests say otherwise.
    private const int SeasonDays = 240;

    public async Task<Outcome<Neighbours>> ReadAsync(Actor actor, IReadOnlyCollection<long> growOuts, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(growOuts);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var asked = await db.Set<GrowOutRow>().AsNoTracking().Where(row => growOuts.Contains(row.Id) && row.GrowerId != null && !row.IsVoid).OrderBy(row => row.Id).ToListAsync(stop);
        var growers = asked.Select(row => row.GrowerId).Distinct().ToArray();
        var theirs = await db.Set<GrowOutRow>().AsNoTracking().Where(row => growers.Contains(row.GrowerId) && !row.IsVoid).OrderBy(row => row.Id).ToListAsync(stop);
        var lots = await LotsAsync(db, [.. theirs.Select(row => row.FromId).Distinct()], stop);
        var names = await LineageNames.OfAsync(db, [.. lots.Values.Select(from => from.Lot).Distinct()], stop);
        GoesBy NameOf(GrowOutRow row) => lots.TryGetValue(row.FromId, out var from) ? names[from.Lot] : GoesBy.NotKnown;
        return new Neighbours(asked.ToDictionary(
            row => row.Id,
            row => (IReadOnlyList<Neighbour>)[.. theirs
                .Where(other => other.Id != row.Id && other.GrowerId == row.GrowerId && SameSeason(row, other))
                .Select(other => new Neighbour(
                    lots.GetValueOrDefault(other.FromId).Code ?? "", NameOf(other), other.SownOn, other.SownLater is true, NameOf(row).Species is { } species && species == NameOf(other).Species, Overlap(row, other)))
                .OrderByDescending(other => other.SameSpecies).ThenBy(other => other.SownOn)]));
    }

    private static bool SameSeason(GrowOutRow one, GrowOutRow other) => Overlap(one, other) ?? Math.Abs(one.SownOn.DayNumber - other.SownOn.DayNumber) <= SeasonDays;

    private static bool? Overlap(GrowOutRow one, GrowOutRow other) =>
        one.HarvestedOn is not { } first || other.HarvestedOn is not { } second ? null
        : one.SownOn > second || other.SownOn > first ? false
        // Either may have been sown later than the day that is known.
        : one.SownLater is true || other.SownLater is true ? null
        : true;

    private static async Task<Dictionary<long, (string Code, long Lot)>> LotsAsync(LibraryDbContext db, long[] from, CancellationToken stop)
    {
        var known = new Dictionary<long, (string, long)>();
        foreach (var packet in await db.Set<PacketRow>().Where(row => from.Contains(row.Id)).Select(row => new { row.Id, row.Code, row.LotId }).ToListAsync(stop)) known[packet.Id] = (packet.Code, packet.LotId);
        foreach (var lot in await db.Set<LotRow>().Where(row => from.Contains(row.Id)).Select(row => new { row.Id, row.Code }).ToListAsync(stop)) known[lot.Id] = (lot.Code, lot.Id);
        return known;
    }
}
