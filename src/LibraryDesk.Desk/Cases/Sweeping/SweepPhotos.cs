using System.Globalization;
using System.Runtime.CompilerServices;
using LibraryDesk.Data.Cases;
using LibraryDesk.Photos;

namespace LibraryDesk.Desk.Cases.Sweeping;

/// <summary>What a sweep took away.</summary>
/// <param name="Rows">Photos taken off their cases long ago, that can no longer be put back.</param>
/// <param name="Photos">Photos in the store that nothing on record points to.</param>
/// <param name="Unfinished">Half-written files of uploads that broke off.</param>
public sealed record Swept(int Rows, int Photos, int Unfinished);

/// <summary>
/// Clears away photos that were taken off their cases more than <see cref="PutBackDays"/> days ago, and files that nothing on record points
/// to. What was saved within the last <see cref="GraceHours"/> hours stays: its row may be about to be written.
/// </summary>
public sealed class SweepPhotos(IDbContextFactory<LibraryDbContext> factory, IPhotoStore store, TimeProvider clock)
{
    /// <summary>Days in which a photo taken off a case can be put back.</summary>
    public const int PutBackDays = 30;

    /// <summary>Hours a file is left alone after it was saved.</summary>
    public const int GraceHours = 24;

    /// <summary>The store and the database belong to different libraries.</summary>
    public const string StrangeStoreCode = "sweep.strange-store";

    private const int MostAtOnce = 200;
    private const int FewPhotos = 20;

    /// <param name="actor">A librarian, the server itself or the command line.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<Swept>> RunAsync(Actor actor, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        var now = clock.GetUtcNow();
        await using var db = await factory.CreateDbContextAsync(stop);
        var longAgo = now.AddDays(-PutBackDays);
        var before = now.AddHours(-GraceHours);
        if (await IsStrangeAsync(db, before, stop)) return new Refusal(StrangeStoreCode, "None of the stored photos belongs to this library. Check the folder of the photos and the database; nothing was cleared away.");
        var rows = await db.Set<PhotoRow>().Where(photo => photo.RemovedAt != null && photo.RemovedAt < longAgo).ExecuteDeleteAsync(stop);
        var photos = 0;
        await foreach (var some in ChunksAsync(before, stop))
        {
            var unused = some.Except(await UsedAsync(db, some, stop)).ToArray();
            foreach (var hash in unused) await store.DeleteAsync(hash, stop);
            photos += unused.Length;
        }
        return new Swept(rows, photos, store.SweepUnfinished(before));
    }

    // A sweep given one library's photos and another's database would clear away everything.
    private async Task<bool> IsStrangeAsync(LibraryDbContext db, DateTimeOffset before, CancellationToken stop)
    {
        var seen = 0;
        await foreach (var some in ChunksAsync(before, stop))
        {
            if ((await UsedAsync(db, some, stop)).Count > 0) return false;
            seen += some.Count;
        }
        return seen > FewPhotos;
    }

    private async IAsyncEnumerable<IReadOnlyList<string>> ChunksAsync(DateTimeOffset before, [EnumeratorCancellation] CancellationToken stop)
    {
        var some = new List<string>();
        await foreach (var hash in store.UntouchedSinceAsync(before, stop))
        {
            some.Add(hash);
            if (some.Count < MostAtOnce) continue;
            yield return some;
            some = [];
        }
        if (some.Count > 0) yield return some;
    }

    // Every table with a store key counts, also one that came later than this sweep.
    private static async Task<IReadOnlySet<string>> UsedAsync(LibraryDbContext db, IReadOnlyList<string> hashes, CancellationToken stop)
    {
        var used = new HashSet<string>(StringComparer.Ordinal);
        var places = string.Join(", ", Enumerable.Range(0, hashes.Count).Select(place => string.Create(CultureInfo.InvariantCulture, $"{{{place}}}")));
        foreach (var entity in db.Model.GetEntityTypes())
        {
            if (entity.FindProperty(nameof(PhotoRow.StoreKey))?.GetColumnName() is not { } column || entity.GetTableName() is not { } table) continue;
            // Table and column are the model's own names; the hashes go as parameters.
            var sql = $"SELECT {column} AS \"Value\" FROM {table} WHERE {column} IN ({places})";
            used.UnionWith(await db.Database.SqlQueryRaw<string>(sql, [.. hashes]).ToListAsync(stop));
        }
        return used;
    }
}
