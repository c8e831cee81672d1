using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>
/// Searches packets, lots, names and donors by code, name with slips of spelling, trait and season. All words that stand for a word in use must
/// fit, the others narrow nothing; a year narrows to that season. The same on both databases: words are compared as <see cref="SearchText"/> made them.
/// </summary>
public sealed class FindAnything(IDbContextFactory<LibraryDbContext> factory)
{
    // More names than this are read newest lot first instead of name by name.
    private const int MostNames = 500;
    private const int LongestQuery = 200;

    /// <param name="actor">Anybody; donors are found by librarians alone.</param>
    /// <param name="query">What was typed.</param>
    /// <param name="most">The most of each kind, 1 to 100.</param>
    /// <param name="stop">Stops.</param>
    public async Task<Found> RunAsync(Actor actor, string? query, int most, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        most = Math.Clamp(most, 1, 100);
        var typed = (query ?? "").Trim();
        typed = typed[..Math.Min(typed.Length, LongestQuery)];
        if (typed.Length == 0) return Found.Nothing("");
        await using var db = await factory.CreateDbContextAsync(stop);
        var found = CodeSearch.Beginning(typed) is { } code ? await ByCodeAsync(db, actor, typed, code, most, stop) : Found.Nothing(typed);
        if (found.Count > 0 || found.WrongCode is not null) return found;

        var asked = await AskedWords.ReadAsync(db, typed, actor.IsLibrarian ? [SearchIndex.Names, SearchIndex.Donors] : [SearchIndex.Names], stop);
        var words = asked.Words.Select(word => word.Word).ToArray();
        if (asked.FindNothing) return found with { Words = words };

        var used = asked.Used;
        var names = new NameSearch(db, used, stop);
        var hits = await names.FindAsync(MostNames);
        var (lots, more) = await new LotSearch(db, used, asked.Year, stop).FindAsync(hits, most);
        return found with
        {
            Words = words,
            Names = asked.Year is null ? await names.ShowAsync(hits, most) : [],
            Lots = lots.Shown,
            MoreLots = more,
            Packets = await ShelfAsync(db, lots, most, stop),
            Accessions = actor.IsLibrarian && used.Count > 0 ? await ByDonorAsync(db, used, most, stop) : [],
        };
    }

    private static async Task<Found> ByCodeAsync(LibraryDbContext db, Actor actor, string typed, string code, int most, CancellationToken stop)
    {
        var lots = await CodeSearch.Lots(db, code).Take(most + 1).ToListAsync(stop);
        var packets = await CodeSearch.Packets(db, code).Take(most).ToListAsync(stop);
        var accessions = await CodeSearch.Accessions(db, code).Take(most).ToListAsync(stop);
        var of = lots.Select(lot => lot.Id).Concat(packets.Select(packet => packet.LotId)).Distinct().ToArray();
        var names = await LotNames.OfAsync(db, of, stop);
        return Found.Nothing(typed) with
        {
            WrongCode = lots.Count + packets.Count + accessions.Count == 0 ? CodeSearch.WrongCode(typed) : null,
            Lots = await LotNames.ShowAsync(db, [.. lots.Take(most)], stop),
            MoreLots = lots.Count > most,
            Packets = [.. packets.Select(packet => new FoundPacket(packet.Code, names.GetValueOrDefault(packet.LotId, GoesBy.NotKnown), packet.Standing))],
            Accessions = await ShowAsync(db, accessions, actor.IsLibrarian, stop),
        };
    }

    private static async Task<IReadOnlyList<FoundPacket>> ShelfAsync(LibraryDbContext db, LotHits lots, int most, CancellationToken stop)
    {
        var ids = lots.Ids;
        var packets = await db.Set<PacketRow>().Where(packet => ids.Contains(packet.LotId) && packet.Standing == PacketStanding.OnShelf)
            .OrderByDescending(packet => packet.Id).Take(most).Select(packet => new { packet.Code, packet.LotId, packet.Standing }).ToListAsync(stop);
        return [.. packets.Select(packet => new FoundPacket(packet.Code, lots.Names.GetValueOrDefault(packet.LotId, GoesBy.NotKnown), packet.Standing))];
    }

    private static async Task<IReadOnlyList<FoundAccession>> ByDonorAsync(LibraryDbContext db, IReadOnlyList<MatchedWord> used, int most, CancellationToken stop)
    {
        var postings = db.Set<SearchPostingRow>();
        var first = used[0].InUse;
        var refs = postings.Where(row => row.Kind == SearchIndex.Donors && first.Contains(row.Word)).Select(row => row.Ref);
        foreach (var word in used.Skip(1))
        {
            var also = word.InUse;
            refs = refs.Where(of => postings.Any(row => row.Kind == SearchIndex.Donors && row.Ref == of && also.Contains(row.Word)));
        }

        var ids = await refs.Distinct().OrderByDescending(of => of).Take(most).ToListAsync(stop);
        return await ShowAsync(db, await db.Set<AccessionRow>().AsNoTracking().Where(row => ids.Contains(row.Id) && !row.IsVoid).OrderByDescending(row => row.Id).ToListAsync(stop), withPeople: true, stop);
    }

    private static async Task<IReadOnlyList<FoundAccession>> ShowAsync(LibraryDbContext db, List<AccessionRow> rows, bool withPeople, CancellationToken stop)
    {
        if (rows.Count == 0) return [];
        var ids = rows.Select(row => row.Id).ToArray();
        var people = withPeople ? await PersonNames.OfAsync(db, rows.Select(row => row.DonorId), stop) : new Dictionary<Guid, string>();
        var lots = (await db.Set<LineageEdgeRow>().Where(edge => ids.Contains(edge.ParentId))
            .Join(db.Set<LotRow>().Where(lot => !lot.IsVoid), edge => edge.ChildId, lot => lot.Id, (edge, lot) => new { edge.ParentId, lot.Id, lot.Code }).OrderBy(lot => lot.Id).ToListAsync(stop)).ToLookup(lot => lot.ParentId, lot => lot.Code);
        return [.. rows.Select(row => new FoundAccession(
            row.Code, row.DeclaredName, row.ReceivedOn, row.Library ?? (row.DonorId is { } donor ? people.GetValueOrDefault(donor) : null), lots[row.Id].FirstOrDefault()))];
    }
}
