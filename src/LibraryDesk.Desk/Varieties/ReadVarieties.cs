using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;

namespace LibraryDesk.Desk.Varieties;

/// <summary>One record of a list.</summary>
public sealed record VarietyLine(long Id, string Name, string Species, BreedingStatus Breeding, int Lots);

/// <summary>A page of records.</summary>
/// <param name="Total">How many there are in all.</param>
public sealed record VarietyLines(IReadOnlyList<VarietyLine> Varieties, int Total);

/// <summary>A reference photo.</summary>
public sealed record VarietyPhoto(Guid Id, string Caption, int Width, int Height, bool IsDrawing);

/// <summary>A record as read.</summary>
/// <param name="Row">The record.</param>
/// <param name="Synonyms">Other names.</param>
/// <param name="Traits">Trait and state ids of the crop guide.</param>
/// <param name="Photos">Reference photos, oldest first.</param>
/// <param name="Lots">Codes of the newest lots that go by the name.</param>
public sealed record VarietyView(VarietyRow Row, IReadOnlyList<string> Synonyms, IReadOnlyList<(string Trait, string State)> Traits, IReadOnlyList<VarietyPhoto> Photos, IReadOnlyList<string> Lots);

/// <summary>Reads what the library means by names. Anybody may.</summary>
public sealed class ReadVarieties(IDbContextFactory<LibraryDbContext> factory)
{
    public const string NotFoundCode = "variety.not-found";
    public const int PageSize = 50;

    private const int MostLots = 50;

    /// <param name="species">One species; null for all.</param>
    /// <param name="page">From 1.</param>
    /// <param name="stop">Stops.</param>
    public async Task<VarietyLines> ListAsync(string? species, int page, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = db.Set<VarietyRow>().AsNoTracking().Where(row => species == null || row.Species == species);
        var total = await rows.CountAsync(stop);
        var shown = await rows.OrderBy(row => row.NormalizedName).ThenBy(row => row.Id).Skip((Math.Max(1, page) - 1) * PageSize).Take(PageSize).ToListAsync(stop);
        var names = shown.Select(row => row.NormalizedName).ToArray();
        var lots = await db.Set<SearchNameRow>().Where(name => names.Contains(name.NormalizedName))
            .Select(name => new { name.Species, name.NormalizedName, Lots = db.Set<SearchLotRow>().Count(lot => lot.NameId == name.Id) }).ToListAsync(stop);
        var counts = lots.ToDictionary(name => (name.Species, name.NormalizedName), name => name.Lots);
        return new([.. shown.Select(row => new VarietyLine(row.Id, row.Name, row.Species, row.Breeding, counts.GetValueOrDefault((row.Species, row.NormalizedName))))], total);
    }

    public async Task<Outcome<VarietyView>> OneAsync(long id, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<VarietyRow>().AsNoTracking().SingleOrDefaultAsync(variety => variety.Id == id, stop);
        if (row is null) return NotFound;
        var photos = await db.Set<VarietyPhotoRow>().AsNoTracking().Where(photo => photo.VarietyId == id && photo.RemovedAt == null).ToListAsync(stop);
        var lots = await db.Set<SearchNameRow>().Where(name => name.NormalizedName == row.NormalizedName && name.Species == row.Species)
            .Join(db.Set<SearchLotRow>(), name => name.Id, lot => lot.NameId, (_, lot) => lot.LotId)
            .Join(db.Set<LotRow>(), of => of, lot => lot.Id, (_, lot) => new { lot.Id, lot.Code }).OrderByDescending(lot => lot.Id).Take(MostLots).Select(lot => lot.Code).ToListAsync(stop);
        return new VarietyView(
            row,
            row.Synonyms.Split('\n', StringSplitOptions.RemoveEmptyEntries),
            [.. row.Traits.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split('=', 2)).Where(pair => pair.Length == 2).Select(pair => (pair[0], pair[1]))],
            [.. photos.OrderBy(photo => photo.At).Select(photo => new VarietyPhoto(photo.Id, photo.Caption, photo.Width, photo.Height, photo.IsDrawing))],
            lots);
    }

    internal static Refusal NotFound { get; } = new(NotFoundCode, "There is no record of this variety. Look for it in the list.");
}
