using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Seeds;

/// <summary>What the library means by a name.</summary>
/// <param name="Species">Candidate id of a crop guide. Name and species together stand once.</param>
/// <param name="Synonyms">Other names it goes by.</param>
/// <param name="Traits">What it should look like: trait and state ids of the guide; several states of a trait mean that each occurs.</param>
/// <param name="Source">Where the name comes from; null when not known.</param>
public sealed record VarietyDescription(
    string? Name,
    string? Species,
    BreedingStatus Breeding,
    IReadOnlyList<string> Synonyms,
    string? Description,
    IReadOnlyList<(string Trait, string State)> Traits,
    string? Source);

/// <summary>Writes down what the library means by a variety name, or changes it. The record says what would fit a name; it determines nothing.</summary>
public sealed class DescribeVariety(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, GuideShelf shelf)
{
    public const string NameCode = "variety.name";
    public const string SpeciesCode = "variety.species";
    public const string TraitCode = "variety.trait";
    public const string TooLongCode = "variety.too-long";
    public const string ChangedMeanwhileCode = "variety.changed-meanwhile";

    private const int LongText = 4000;
    private const int ShortText = 1000;

    /// <param name="shownRevision">The revision the form showed; null for a new record.</param>
    public async Task<Outcome<VarietyRow>> RunAsync(Actor actor, VarietyDescription wanted, long? shownRevision, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentNullException.ThrowIfNull(wanted);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        var name = (wanted.Name ?? "").Trim();
        var guides = await shelf.AllCurrentAsync(stop);
        await using var db = await factory.CreateDbContextAsync(stop);
        var normalized = name.ToUpperInvariant();
        var row = await db.Set<VarietyRow>().SingleOrDefaultAsync(v => v.Species == wanted.Species && v.NormalizedName == normalized, stop);

        if (Fault(wanted, name, guides.Select(guide => guide.Guide).FirstOrDefault(guide => guide.FindCandidate(wanted.Species ?? "") is not null)) is { } fault) return fault;
        if ((row?.Revision) != shownRevision) return ChangedMeanwhile;

        if (row is null) db.Add(row = new VarietyRow { Name = name, NormalizedName = normalized, Species = wanted.Species! });
        row.Name = name;
        row.Synonyms = string.Join('\n', wanted.Synonyms.Select(other => other.Trim()).Where(other => other.Length > 0));
        row.Breeding = wanted.Breeding;
        row.Description = wanted.Description?.Trim() ?? "";
        row.Traits = string.Join('\n', wanted.Traits.Select(pair => $"{pair.Trait}={pair.State}").Distinct());
        row.Source = wanted.Source?.Trim() ?? "";
        try
        {
            await SaveAsync(db, row, stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return ChangedMeanwhile;
        }
        catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
        {
            return ChangedMeanwhile;
        }
        return row;
    }

    // Search goes with it in one transaction, under the ledger's lock: numbers of names are handed out there.
    private Task SaveAsync(LibraryDbContext db, VarietyRow row, CancellationToken stop) => db.Database.CreateExecutionStrategy().ExecuteAsync(async () =>
    {
        await using var transaction = await db.Database.BeginTransactionAsync(stop);
        await provider.LockLedgerAsync(db, stop);
        await db.SaveChangesAsync(stop);
        await new SearchIndex(db, stop).FollowAsync(row);
        await transaction.CommitAsync(stop);
    });

    private static Refusal ChangedMeanwhile { get; } = new(
        ChangedMeanwhileCode, "This variety has been described already, or was changed just now. Open its record and change it there.");

    private static Refusal? Fault(VarietyDescription wanted, string name, CropGuide? guide)
    {
        if (name.Length is 0 or > SeedText.Name) return new Refusal(NameCode, $"Give the variety a name of at most {SeedText.Name} letters.");
        if (guide is null) return new Refusal(SpeciesCode, "Choose the species from a crop guide's list; a variety belongs to one species.");
        if (wanted.Description?.Length > LongText || wanted.Source?.Length > ShortText || wanted.Synonyms.Sum(other => other.Length + 1) > ShortText)
            return new Refusal(TooLongCode, $"Keep the description under {LongText} letters, and the other names and the source under {ShortText} each.");
        foreach (var (trait, state) in wanted.Traits)
        {
            if (guide.FindTrait(trait)?.FindState(state) is null)
                return new Refusal(TraitCode, $"The guide {guide.Crop} has no \"{state}\" for \"{trait}\". Choose trait and state from its lists.");
        }
        return null;
    }
}
