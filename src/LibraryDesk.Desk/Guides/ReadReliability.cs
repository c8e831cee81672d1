using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Desk.Guides;

/// <summary>How reliable answers to each trait of a draft turned out on determined plants, for librarians. A version uses it only when it counts determined plants.</summary>
public sealed class ReadReliability(IDbContextFactory<LibraryDbContext> factory, GuideShelf shelf)
{
    public async Task<Outcome<IReadOnlyList<LearnedReliability>>> RunAsync(Actor actor, string guideId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        if (!(await DraftInHand.ReadAsync(db, shelf, guideId, stop)).TryGet(out var draft, out var no)) return no;
        if (GuideCheck.Of(draft.Guide).Count > 0) return GuideRefusals.Faulty;
        var plants = await DeterminedCases.ReadAsync(db, guideId, stop);

        return LearnedReliability.Of(draft.Guide, plants).ToList();
    }
}
