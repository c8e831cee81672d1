using LibraryDesk.Data.People;
using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>Keeps the search tables in step. Works inside the transaction of what it follows, under the ledger lock, so that numbers are handed out once.</summary>
internal sealed class SearchIndex(LibraryDbContext db, CancellationToken stop)
{
    public const string Names = "N";
    public const string Donors = "D";

    // Asked again for each batch of a rebuild otherwise.
    private readonly HashSet<string> _knownWords = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Species, string Name), SearchNameRow> _names = [];
    private long? _lastName;

    /// <summary>Follows acts on seed that were saved just before. Nothing to do for most kinds.</summary>
    public async Task FollowAsync(IReadOnlyList<SeedAct> acts)
    {
        var lots = new HashSet<long>();
        var accessions = new HashSet<long>();
        foreach (var act in acts) await TouchAsync(act, lots, accessions);
        if (lots.Count > 0) await PutLotsAsync([.. lots]);
        if (accessions.Count > 0) await PutDonorsAsync([.. accessions]);
        if (lots.Count + accessions.Count > 0) await db.SaveChangesAsync(stop);
    }

    /// <summary>Follows a change of what the library means by a name.</summary>
    public async Task FollowAsync(VarietyRow variety)
    {
        var name = await NameAsync(variety.Species, variety.Name);
        // A new name was given its words just now: what is saved is changed, not added twice.
        await db.SaveChangesAsync(stop);
        var there = await db.Set<SearchPostingRow>().Where(row => row.Kind == Names && row.Ref == name.Id).ToListAsync(stop);
        await PutWordsAsync(Names, name.Id, NameWords.Of(name, variety), there);
        await db.SaveChangesAsync(stop);
    }

    /// <summary>Follows the erasure of somebody who gave seed: their name is found no more, and its words are gone from the tables.</summary>
    public async Task ForgetDonorAsync(Guid donor)
    {
        var accessions = await db.Set<AccessionRow>().Where(row => row.DonorId == donor).Select(row => row.Id).ToListAsync(stop);
        var postings = await db.Set<SearchPostingRow>().Where(row => row.Kind == Donors && accessions.Contains(row.Ref)).ToListAsync(stop);
        db.RemoveRange(postings);
        await db.SaveChangesAsync(stop);
        await DropUnusedAsync([.. postings.Select(row => row.Word).Distinct()]);
        await db.SaveChangesAsync(stop);
    }

    /// <summary>Writes names and seasons of lots; lots that were undone are left out.</summary>
    public Task PutLotsAsync(IReadOnlyCollection<long> ids) => PutLotsAsync(ids, of => LineageNames.OfAsync(db, of, stop));

    /// <summary>The same in a rebuild, oldest lots first: the names of what they came from were written just before, so that no lineage is walked twice.</summary>
    public Task PutNextLotsAsync(IReadOnlyCollection<long> ids) => PutLotsAsync(ids, async of =>
    {
        var edges = await LineageSql.EdgesAboveToSearched(db, of).AsNoTracking().ToListAsync(stop);
        var known = await LotNames.OfAsync(db, [.. edges.Select(edge => edge.ParentId).Distinct()], stop);
        return await LineageNames.OfAsync(db, of, edges, known, stop);
    });

    private async Task PutLotsAsync(IReadOnlyCollection<long> ids, Func<long[], Task<IReadOnlyDictionary<long, GoesBy>>> namesOf)
    {
        var lots = await db.Set<LotRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).OrderBy(row => row.Id).ToListAsync(stop);
        var there = await db.Set<SearchLotRow>().Where(row => ids.Contains(row.LotId)).ToDictionaryAsync(row => row.LotId, stop);
        var names = await namesOf([.. lots.Select(lot => lot.Id)]);
        var years = await HarvestYearsAsync([.. lots.Select(lot => lot.Id)]);
        foreach (var lot in lots)
        {
            var known = there.GetValueOrDefault(lot.Id);
            if (lot.IsVoid)
            {
                if (known is not null) db.Remove(known);
                continue;
            }

            var name = await NameAsync(names[lot.Id].Species ?? lot.Species ?? "", names[lot.Id].Variety ?? "");
            if (known is null) db.Add(known = new SearchLotRow { LotId = lot.Id });
            (known.NameId, known.Year) = (name.Id, years.GetValueOrDefault(lot.Id, lot.MadeOn.Year));
        }
    }

    /// <summary>Writes the names of varieties that no lot bears; those of lots had the words of their record when they were written.</summary>
    public async Task PutVarietiesAsync(IReadOnlyCollection<long> ids)
    {
        foreach (var variety in await db.Set<VarietyRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).OrderBy(row => row.Id).ToListAsync(stop)) await NameAsync(variety.Species, variety.Name);
    }

    /// <summary>Writes the donors of accessions.</summary>
    public async Task PutDonorsAsync(IReadOnlyCollection<long> ids)
    {
        var accessions = await db.Set<AccessionRow>().AsNoTracking().Where(row => ids.Contains(row.Id)).OrderBy(row => row.Id).ToListAsync(stop);
        var people = accessions.Select(row => row.DonorId).OfType<Guid>().Distinct().ToArray();
        var named = await db.Set<DonorRow>().Where(donor => people.Contains(donor.Id) && donor.ErasedAt == null).ToDictionaryAsync(donor => donor.Id, donor => donor.Name, stop);
        foreach (var user in await db.Set<DeskUser>().Where(user => people.Contains(user.Id) && user.ErasedAt == null).Select(user => new { user.Id, user.DisplayName }).ToListAsync(stop)) named[user.Id] = user.DisplayName;
        var there = (await db.Set<SearchPostingRow>().Where(row => row.Kind == Donors && ids.Contains(row.Ref)).ToListAsync(stop)).ToLookup(row => row.Ref);
        foreach (var accession in accessions)
        {
            var text = accession.IsVoid ? "" : accession.Library ?? (accession.DonorId is { } donor ? named.GetValueOrDefault(donor, "") : "");
            await PutWordsAsync(Donors, accession.Id, SearchText.Words(text).ToDictionary(word => word, _ => NameWords.OfName), there[accession.Id]);
        }
    }

    private async Task TouchAsync(SeedAct act, HashSet<long> lots, HashSet<long> accessions)
    {
        switch (act)
        {
            case Accessioned accessioned: accessions.Add(accessioned.Accession.Value); break;
            case TransferredIn transferred: accessions.Add(transferred.Accession.Value); break;
            case LotMade made: lots.Add(made.Lot.Value); break;
            case Named named: await TouchBelowAsync(named.Node, lots); break;
            case Corrected corrected:
                await TouchAsync(corrected.Was.Act, lots, accessions);
                if (corrected.Instead is { } instead) await TouchAsync(instead.Act, lots, accessions);
                // A lot that is said anew may be of another species, and what was made of it goes by that.
                if (corrected.Was.Act is LotMade or Accessioned) await TouchBelowAsync(corrected.Was.Act.Subjects.First(), lots);
                break;
        }
    }

    private async Task TouchBelowAsync(NodeId node, HashSet<long> lots)
    {
        var below = await LineageSql.EdgesBelow(db, node.Value).AsNoTracking().Select(edge => edge.ChildId).Distinct().ToListAsync(stop);
        below.Add(node.Value);
        lots.UnionWith(await db.Set<LotRow>().Where(row => below.Contains(row.Id)).Select(row => row.Id).ToListAsync(stop));
    }

    private async Task<Dictionary<long, int>> HarvestYearsAsync(long[] lots)
    {
        var years = await db.Set<LineageEdgeRow>().Where(edge => lots.Contains(edge.ChildId))
            .Join(db.Set<AccessionRow>().Where(row => row.HarvestYear != null), edge => edge.ParentId, row => row.Id, (edge, row) => new { edge.ChildId, row.HarvestYear }).ToListAsync(stop);
        return years.GroupBy(row => row.ChildId).ToDictionary(row => row.Key, row => row.Max(year => year.HarvestYear!.Value));
    }

    private async Task<SearchNameRow> NameAsync(string species, string variety)
    {
        var normalized = variety.Trim().ToUpperInvariant();
        if (_names.TryGetValue((species, normalized), out var row)) return row;
        row = await db.Set<SearchNameRow>().SingleOrDefaultAsync(name => name.NormalizedName == normalized && name.Species == species, stop);
        if (row is not null) return _names[(species, normalized)] = row;
        _lastName ??= await db.Set<SearchNameRow>().MaxAsync(name => (long?)name.Id, stop) ?? 0;
        db.Add(row = _names[(species, normalized)] = new SearchNameRow { Id = (++_lastName).Value, Species = species, NormalizedName = normalized, Display = variety.Trim() });
        var described = normalized.Length == 0 ? null : await db.Set<VarietyRow>().AsNoTracking().SingleOrDefaultAsync(known => known.Species == species && known.NormalizedName == normalized, stop);
        await PutWordsAsync(Names, row.Id, NameWords.Of(row, described), []);
        return row;
    }

    private async Task PutWordsAsync(string kind, long of, IReadOnlyDictionary<string, int> words, IEnumerable<SearchPostingRow> standing)
    {
        var there = standing.ToDictionary(row => row.Word);
        foreach (var (word, weight) in words)
        {
            if (there.Remove(word, out var known)) known.Weight = weight;
            else db.Add(new SearchPostingRow { Word = word, Kind = kind, Ref = of, Weight = weight });
        }

        foreach (var word in words.Keys.Where(word => !_knownWords.Contains(word)).ToArray()) await PutTrigramsAsync(word);
        if (there.Count == 0) return;
        db.RemoveRange(there.Values);
        await db.SaveChangesAsync(stop);
        await DropUnusedAsync([.. there.Keys]);
    }

    private async Task PutTrigramsAsync(string word)
    {
        _knownWords.Add(word);
        if (await db.Set<SearchTrigramRow>().AnyAsync(row => row.Word == word, stop)) return;
        foreach (var trigram in SearchText.Trigrams(word)) db.Add(new SearchTrigramRow { Trigram = trigram, Word = word });
    }

    private async Task DropUnusedAsync(IReadOnlyCollection<string> words)
    {
        var used = await db.Set<SearchPostingRow>().Where(row => words.Contains(row.Word)).Select(row => row.Word).Distinct().ToListAsync(stop);
        var unused = words.Except(used).ToArray();
        db.RemoveRange(await db.Set<SearchTrigramRow>().Where(row => unused.Contains(row.Word)).ToListAsync(stop));
        _knownWords.ExceptWith(unused);
    }
}
