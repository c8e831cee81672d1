using System.Runtime.CompilerServices;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Keeping;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Keeping;

/// <summary>What a lot is due for.</summary>
public enum DueKind
{
    /// <summary>A germination test.</summary>
    Test,

    /// <summary>Growing anew.</summary>
    Regrow,

    /// <summary>A stocktake.</summary>
    Recount,
}

/// <summary>One thing that is due.</summary>
/// <param name="Code">The lot.</param>
/// <param name="Name">What it goes by.</param>
/// <param name="Kind">What for.</param>
/// <param name="On">By when.</param>
/// <param name="Stock">What is left.</param>
/// <param name="Latest">Its last germination test; null without one.</param>
/// <param name="Threshold">The share it is measured by; null while never tested.</param>
/// <param name="RestsOnForecast">True when the day comes from the viability equation.</param>
/// <param name="Place">Where it is kept; null when not said.</param>
public sealed record DueLine(string Code, GoesBy Name, DueKind Kind, DateOnly On, Quantity Stock, ShareInterval? Latest, double? Threshold, bool RestsOnForecast, string? Place);

/// <summary>What is due.</summary>
/// <param name="Lines">Soonest first, at most <see cref="DueList.Most"/>.</param>
/// <param name="Total">How many there are up to the horizon.</param>
/// <param name="Overdue">How many of those are past their day.</param>
/// <param name="Today">The day it was read.</param>
public sealed record DueLines(IReadOnlyList<DueLine> Lines, int Total, int Overdue, DateOnly Today);

/// <summary>Works out what to test, regrow and recount, and by when. Lots are read one after the other, so that memory does not grow with the library.</summary>
public sealed class DueList(IDbContextFactory<LibraryDbContext> factory, LibraryClock clock)
{
    /// <summary>The most lines of one reading.</summary>
    public const int Most = 200;

    private const int Batch = 2000;

    /// <param name="actor">A volunteer or librarian.</param>
    /// <param name="only">One kind; null for all.</param>
    /// <param name="days">How far ahead, 0 to 3650; 0 for what is due today or overdue.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Outcome<DueLines>> ReadAsync(Actor actor, DueKind? only, int days, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsVolunteer) return PeopleRefusals.VolunteersOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        var settings = await db.Set<LibrarySettingsRow>().AsNoTracking().SingleOrDefaultAsync(stop) ?? new LibrarySettingsRow();
        var today = clock.Today;
        var until = today.AddDays(Math.Clamp(days, 0, 3650));
        var counted = settings.RecountEveryDays > 0 ? await LastCountsAsync(db, stop) : [];

        var soonest = new PriorityQueue<Due, (int Day, long Lot, int Kind)>(Comparer<(int, long, int)>.Create((left, right) => right.CompareTo(left)));
        var (total, overdue) = (0, 0);
        await foreach (var (row, tests) in LotsAsync(db, stop))
        {
            foreach (var due in DuesOf(row, tests, counted, settings, today).Where(due => due.On <= until && (only is null || due.Kind == only)))
            {
                total++;
                if (due.On < today) overdue++;
                soonest.Enqueue(due, (due.On.DayNumber, row.Id, (int)due.Kind));
                if (soonest.Count > Most) soonest.Dequeue();
            }
        }

        var kept = soonest.UnorderedItems.OrderBy(item => item.Priority).Select(item => item.Element).ToArray();
        var names = await LineageNames.OfAsync(db, [.. kept.Select(due => due.Lot.Id).Distinct()], stop);
        return new DueLines(
            [.. kept.Select(due => new DueLine(
                due.Lot.Code, names[due.Lot.Id], due.Kind, due.On, new(due.Lot.Stock, due.Lot.Unit), due.Facts?.Plan.Latest, due.Facts?.Plan.ThresholdShare,
                due.Kind == DueKind.Regrow ? due.Facts is { Plan.RegrowNow: false } : due.Kind == DueKind.Test && due.Facts?.Plan.RestsOnForecast == true, due.Lot.Place))],
            total, overdue, today);
    }

    // In batches by number, so that no more than one batch is in memory.
    private static async IAsyncEnumerable<(LotRow Lot, IReadOnlyList<GerminationTestRow> Tests)> LotsAsync(LibraryDbContext db, [EnumeratorCancellation] CancellationToken stop)
    {
        for (var after = 0L; ;)
        {
            var lots = await db.Set<LotRow>().AsNoTracking().Where(lot => lot.Id > after && !lot.IsVoid && lot.Stock > 0).OrderBy(lot => lot.Id).Take(Batch).ToListAsync(stop);
            if (lots.Count == 0) yield break;
            var last = lots[^1].Id;
            var tests = (await db.Set<GerminationTestRow>().AsNoTracking().Where(test => test.LotId > after && test.LotId <= last && !test.IsVoid).OrderBy(test => test.Id).ToListAsync(stop)).ToLookup(test => test.LotId);
            foreach (var lot in lots) yield return (lot, [.. tests[lot.Id]]);
            after = last;
        }
    }

    private static IEnumerable<Due> DuesOf(LotRow row, IReadOnlyList<GerminationTestRow> tests, Dictionary<long, DateOnly> counted, LibrarySettingsRow settings, DateOnly today)
    {
        var lot = row.ToRecord();
        var facts = KeepingFacts.Of(lot, [.. tests.Select(test => test.ToRecord())], row.Species, settings);
        if (facts.Plan.RegrowNow) yield return new(row, DueKind.Regrow, tests.Count > 0 ? tests.Max(test => test.ReadOn) : today, facts);
        else if (facts.Forecast?.BelowOn is { } below) yield return new(row, DueKind.Regrow, below, facts);

        // A lot that is to be regrown anyway needs no further test first.
        if (!facts.Plan.RegrowNow && facts.Plan.TestBy is { } testBy) yield return new(row, DueKind.Test, testBy, facts);
        if (settings.RecountEveryDays > 0) yield return new(row, DueKind.Recount, (counted.TryGetValue(row.Id, out var last) ? last : row.MadeOn).AddDays(settings.RecountEveryDays), facts);
    }

    private async Task<Dictionary<long, DateOnly>> LastCountsAsync(LibraryDbContext db, CancellationToken stop)
    {
        var kind = SeedActJson.NameOf(EntryKind.Counted);
        var undone = await UndoneCountsAsync(db, stop);
        var counts = await db.Set<LedgerEntryRow>().Where(entry => entry.Kind == kind && !undone.Contains(entry.Sequence))
            .Join(db.Set<LedgerSubjectRow>(), entry => entry.Sequence, subject => subject.Sequence, (entry, subject) => new { subject.NodeId, entry.At })
            .Where(count => db.Set<LotRow>().Any(lot => lot.Id == count.NodeId))
            .GroupBy(count => count.NodeId).Select(node => new { Node = node.Key, At = node.Max(count => count.At) }).ToListAsync(stop);
        return counts.ToDictionary(count => count.Node, count => clock.DayOf(count.At));
    }

    // Counts that were undone, be it after they had been put right before. A count that was only put right stands.
    private static async Task<long[]> UndoneCountsAsync(LibraryDbContext db, CancellationToken stop)
    {
        var kind = SeedActJson.NameOf(EntryKind.Corrected);
        var corrections = new Dictionary<long, Corrected>();
        await foreach (var row in db.Set<LedgerEntryRow>().AsNoTracking().Where(entry => entry.Kind == kind).AsAsyncEnumerable().WithCancellation(stop))
        {
            if (row.ToEntry()?.ReadAct() is Corrected { Was.Act: Counted } correction) corrections[row.Sequence] = correction;
        }

        return [.. corrections.Values.Where(correction => correction.Instead is null).Select(FirstOf)];

        long FirstOf(Corrected correction)
        {
            while (corrections.TryGetValue(correction.Entry, out var earlier)) correction = earlier;
            return correction.Entry;
        }
    }

    private sealed record Due(LotRow Lot, DueKind Kind, DateOnly On, KeepingFacts? Facts);
}
