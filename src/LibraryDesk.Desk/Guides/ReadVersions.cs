using LibraryDesk.Data.Guides;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Guides;

/// <summary>One version of a guide.</summary>
/// <param name="IsOwn">True where this library published it; false where it came with the desk.</param>
/// <param name="Note">What changed, in the publisher's words; null for one that came with the desk.</param>
/// <param name="IsInUse">True for the version that new cases are ranked by.</param>
public sealed record VersionLine(string Version, DateTimeOffset PublishedAt, bool IsOwn, string? Note, bool IsInUse);

/// <summary>A guide opened for reading.</summary>
/// <param name="Version">The version asked for; <see cref="ReadVersions.Draft"/> for the draft, null for the one in use.</param>
public sealed record OpenedGuide(CompiledGuide Compiled, string? Version)
{
    /// <summary>The guide in the reader's language; the draft as written.</summary>
    public CropGuide Guide => Compiled.Guide;

    /// <summary>True where a librarian reads the draft.</summary>
    public bool IsDraft => Version == ReadVersions.Draft;
}

/// <summary>Two versions side by side.</summary>
public sealed record ComparedGuides(CropGuide Was, CropGuide Is, GuideDifference Difference);

/// <summary>The versions of a guide, for everybody; the draft among them, for librarians.</summary>
public sealed class ReadVersions(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    /// <summary>What is asked for in place of a version to read the draft.</summary>
    public const string Draft = "draft";

    /// <summary>All versions, the newest first.</summary>
    public async Task<Outcome<IReadOnlyList<VersionLine>>> ListAsync(string guideId, CancellationToken stop)
    {
        if (await shelf.CurrentAsync(guideId, stop) is not { } current) return GuideRefusals.NotFound;
        await using var db = await factory.CreateDbContextAsync(stop);
        var rows = await db.Set<GuideVersionRow>().Where(g => g.GuideId == guideId)
            .OrderByDescending(g => g.PublishedAt).ThenByDescending(g => g.Id)
            .Select(g => new { g.Version, g.PublishedAt, IsOwn = g.PublishedById != null, g.Note }).Take(500).ToListAsync(stop);
        return rows.ConvertAll(g => new VersionLine(g.Version, g.PublishedAt, g.IsOwn, g.Note, g.Version == current.Guide.Version));
    }

    /// <summary>Opens a version for reading.</summary>
    /// <param name="version">Null or empty for the one in use.</param>
    public async Task<Outcome<OpenedGuide>> OpenAsync(Actor actor, string guideId, string? version, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (string.IsNullOrEmpty(version)) return await shelf.CurrentAsync(guideId, stop) is { } current ? new OpenedGuide(current, null) : GuideRefusals.NotFound;
        if (version != Draft) return (await shelf.FindAsync(guideId, version, stop)).Then<OpenedGuide>(guide => new OpenedGuide(guide, version));
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await DraftInHand.ReadAsync(db, shelf, guideId, stop)).TryGet(out var draft, out var no)) return no;
        // Read back from its text: only a guide that passes the validator can be made ready.
        return GuideFile.Read(GuideText.Write(draft.Guide)).Guide is { } good ? new OpenedGuide(CompiledGuide.Compile(good), Draft) : GuideRefusals.Faulty;
    }

    /// <summary>What differs between two versions.</summary>
    public async Task<Outcome<ComparedGuides>> CompareAsync(Actor actor, string guideId, string? from, string? to, CancellationToken stop)
    {
        if (!(await ReadAsync(actor, guideId, from, stop)).TryGet(out var was, out var no)) return no;
        if (!(await ReadAsync(actor, guideId, to, stop)).TryGet(out var becomes, out no)) return no;
        return new ComparedGuides(was, becomes, GuideDifference.Between(was, becomes));
    }

    // As written: what changed is the text itself. A draft with faults cannot be ranked by, but it can be compared.
    private async Task<Outcome<CropGuide>> ReadAsync(Actor actor, string guideId, string? version, CancellationToken stop)
    {
        if (string.IsNullOrEmpty(version)) return await shelf.CurrentAsWrittenAsync(guideId, stop) is { } current ? current.Guide : GuideRefusals.NotFound;
        if (version != Draft) return (await shelf.FindAsWrittenAsync(guideId, version, stop)).Then<CropGuide>(guide => guide.Guide);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        return (await DraftInHand.ReadAsync(db, shelf, guideId, stop)).Then<CropGuide>(draft => draft.Guide);
    }
}
