using System.Collections.Concurrent;
using System.Text;
using LibraryDesk.Data.Guides;
using LibraryDesk.Data.Provider;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.Words;
using LibraryDesk.Desk.Words.Guides;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Cases.Odds;

/// <summary>
/// The crop guides of this library, ready for reckoning. A guide that came with the software is written to the database when it is first
/// used, so that a case can be read by its own version long after the software moved on. Guides come in the reader's language; what is
/// stored, sent to somebody else or answered to a program takes them as written.
/// </summary>
public sealed class GuideShelf(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, TimeProvider clock)
{
    private readonly ConcurrentDictionary<(string Id, string Version), CompiledGuide> _ready = new();
    private readonly ConcurrentDictionary<(string Id, string Version, string Language), CompiledGuide> _translated = new();
    private readonly ConcurrentDictionary<string, bool> _stored = new();

    /// <summary>
    /// The version that new cases are ranked by; null when the library has no guide of that id. A library that publishes its own versions stays with them: what the
    /// software brings later is on the shelf, and a librarian takes it over after seeing what it does to the cases.
    /// </summary>
    public async Task<CompiledGuide?> CurrentAsync(string guideId, CancellationToken stop) =>
        await CurrentAsWrittenAsync(guideId, stop) is { } written ? Translated(written) : null;

    /// <summary>As <see cref="CurrentAsync"/>, in the words it was written in.</summary>
    public async Task<CompiledGuide?> CurrentAsWrittenAsync(string guideId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(guideId);
        await StoreBuiltInAsync(guideId, stop);
        await using var db = await factory.CreateDbContextAsync(stop);
        var version = await db.Set<GuideVersionRow>()
            .Where(g => g.GuideId == guideId)
            .OrderByDescending(g => g.PublishedById != null).ThenByDescending(g => g.PublishedAt).ThenByDescending(g => g.Id)
            .Select(g => g.Version)
            .FirstOrDefaultAsync(stop);
        return version is null ? null : await GetAsWrittenAsync(guideId, version, stop);
    }

    /// <summary>One version, where it was found before by <see cref="FindAsync"/>.</summary>
    public async Task<CompiledGuide> GetAsync(string guideId, string version, CancellationToken stop) => Translated(await GetAsWrittenAsync(guideId, version, stop));

    /// <summary>As <see cref="GetAsync"/>, in the words it was written in.</summary>
    public async Task<CompiledGuide> GetAsWrittenAsync(string guideId, string version, CancellationToken stop) =>
        (await FindAsWrittenAsync(guideId, version, stop)).Match(guide => guide, gone => throw new InvalidOperationException(gone.Message));

    /// <summary>One version, or the refusal that says that it is gone.</summary>
    public async Task<Outcome<CompiledGuide>> FindAsync(string guideId, string version, CancellationToken stop) =>
        (await FindAsWrittenAsync(guideId, version, stop)).Then<CompiledGuide>(written => Translated(written));

    /// <summary>As <see cref="FindAsync"/>, in the words it was written in.</summary>
    public async Task<Outcome<CompiledGuide>> FindAsWrittenAsync(string guideId, string version, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(guideId);
        ArgumentNullException.ThrowIfNull(version);
        if (_ready.TryGetValue((guideId, version), out var ready)) return ready;
        await StoreBuiltInAsync(guideId, stop);
        await using var db = await factory.CreateDbContextAsync(stop);
        var json = await db.Set<GuideVersionRow>()
            .Where(g => g.GuideId == guideId && g.Version == version)
            .Select(g => g.Json)
            .SingleOrDefaultAsync(stop);
        if (json is null) return GuideRefusals.VersionGone(guideId, version);
        return _ready.GetOrAdd((guideId, version), _ => Compile(Encoding.UTF8.GetBytes(json)));
    }

    /// <summary>The current version of every guide, by crop.</summary>
    public async Task<IReadOnlyList<CompiledGuide>> AllCurrentAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var published = await db.Set<GuideVersionRow>().Select(g => g.GuideId).Distinct().OrderBy(id => id).Take(500).ToListAsync(stop);
        var guides = new List<CompiledGuide>();
        foreach (var id in published.Union(BuiltInGuides.Ids))
        {
            if (await CurrentAsync(id, stop) is { } guide) guides.Add(guide);
        }
        return [.. guides.OrderBy(g => g.Guide.Crop, StringComparer.Ordinal)];
    }

    private CompiledGuide Translated(CompiledGuide written) =>
        _translated.GetOrAdd((written.Guide.Id, written.Guide.Version, Languages.Now), static (_, guide) => GuideBooks.Translate(guide), written);

    private async Task StoreBuiltInAsync(string guideId, CancellationToken stop)
    {
        if (_stored.ContainsKey(guideId)) return;
        if (BuiltInGuides.Text(guideId) is not { } text) return;
        var version = Compile(text).Guide.Version;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!await db.Set<GuideVersionRow>().AnyAsync(g => g.GuideId == guideId && g.Version == version, stop))
        {
            db.Add(new GuideVersionRow { GuideId = guideId, Version = version, Json = Encoding.UTF8.GetString(text), PublishedAt = clock.GetUtcNow() });
            try
            {
                await db.SaveChangesAsync(stop);
            }
            catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
            {
                // Another request or server stored it first.
            }
        }
        _stored[guideId] = true;
    }

    private static CompiledGuide Compile(byte[] text)
    {
        var reading = GuideFile.Read(text);
        return reading.Guide is { } guide
            ? CompiledGuide.Compile(guide)
            : throw new InvalidOperationException($"A guide on the shelf cannot be read: {reading.Faults[0]}");
    }
}
