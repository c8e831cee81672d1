using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Growing;
using LibraryDesk.Desk.Seeds.Keeping;

namespace LibraryDesk.Desk.Settings;

/// <summary>Reads and changes the library's own choices. The library's clock goes by the time zone last read or chosen.</summary>
public sealed class LibrarySettings(IDbContextFactory<LibraryDbContext> factory, LibraryClock clock)
{
    /// <summary>The settings; the defaults where none were saved yet.</summary>
    public async Task<LibrarySettingsRow> ReadAsync(CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<LibrarySettingsRow>().AsNoTracking().SingleOrDefaultAsync(stop) ?? new LibrarySettingsRow();
        // Another server on the same database may have changed it.
        clock.GoBy(row.TimeZone);
        return row;
    }

    /// <summary>Changes the settings as a librarian; refuses when they changed since the form was shown.</summary>
    public async Task<Outcome<LibrarySettingsRow>> ChangeAsync(
        Actor actor, long shownRevision, Action<LibrarySettingsRow> change, CancellationToken stop)
    {
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var row = await db.Set<LibrarySettingsRow>().SingleOrDefaultAsync(stop);
        if (row is null) db.Add(row = new LibrarySettingsRow());

        if (row.Revision != shownRevision) return ChangedMeanwhile;
        change(row);
        if (Fault(row) is { } fault) return fault;

        try
        {
            await db.SaveChangesAsync(stop);
        }
        catch (DbUpdateConcurrencyException)
        {
            return ChangedMeanwhile;
        }
        clock.GoBy(row.TimeZone);
        return row;
    }

    private static Refusal ChangedMeanwhile { get; } =
        new("settings.changed-meanwhile", "Somebody else changed the settings just now. Look at theirs below and save again.");

    private static Refusal? Fault(LibrarySettingsRow row) => row switch
    {
        { Name.Length: 0 } => new Refusal("settings.name", "Give the library a name."),
        { OpinionsNeeded: < 1 or > 3 } => new Refusal("settings.opinions", "Between one and three concordant opinions can determine a case."),
        { IntakeHoldDays: < 0 or > 365 } => new Refusal("settings.intake-hold", "The intake hold is between 0 and 365 days."),
        { LoanDays: < 0 or > 3650 } => new Refusal("settings.loan", "Seed is hoped for after at most 3650 days; 0 for no day."),
        { RegrowBelowPercent: < 10 or > 98 } => new Refusal("settings.regrow", "The regrowing threshold is between 10 and 98 per cent."),
        { FirstTestDays: < 1 or > 3650 } or { TestEveryDays: < 1 or > 3650 } => new Refusal("settings.tests", "Germination tests come between 1 and 3650 days apart."),
        { RecountEveryDays: < 0 or > 3650 } => new Refusal("settings.recount", "Stocktakes come at most 3650 days apart; 0 for none."),
        { RegrowBelowSeeds: < 0 or > 1_000_000 } => new Refusal("settings.least-seeds", "Give a number of seeds from 0 to 1,000,000; 0 for no such rule."),
        { TimeZone.Length: > 0 } when !LibraryClock.Knows(row.TimeZone) => new Refusal("settings.time-zone", "Choose one of the time zones of the list."),
        _ when !GrowingAdvice.IsolationTopics.Contains(row.IsolationTopic) => new Refusal("settings.isolation", "Choose one of the classes of isolation distance."),
        _ when StoreConditions.Read(row.Stores).Refusal is { } no => no,
        _ when row.CodePrefix.Length != 1 || !row.CodePrefix.All(PrefixLetters.Contains) =>
            new Refusal("settings.prefix", "Packet codes start with one letter. I, L and O are left out: they look like digits."),
        _ when !IsWebAddress(row.PublicAddress) =>
            new Refusal("settings.address", "The address of this desk starts with https:// or http:// and has no spaces."),
        _ when !IsWebAddress(row.LocalRulesUrl) =>
            new Refusal("settings.rules", "The address of the local rules starts with https:// or http:// and has no spaces."),
        _ => null,
    };

    private const string PrefixLetters = "ABCDEFGHJKMNPQRSTUVWXYZ";

    private static bool IsWebAddress(string text) =>
        text.Length == 0 || (!text.Any(char.IsWhiteSpace) && Uri.TryCreate(text, UriKind.Absolute, out var address) && (address.Scheme == "http" || address.Scheme == "https"));
}
