using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Search;

/// <summary>What was found: a case, a packet, a lot, seed as it came in, a page of a crop guide, a person, a donor without a sign-in, another library.</summary>
public enum SearchKind
{
    Case,
    Packet,
    Lot,
    Accession,
    Guide,
    Person,
    Donor,
    Library,
}

/// <summary>One thing found.</summary>
/// <param name="Heading">What it is called.</param>
/// <param name="Detail">A second, quieter line; empty when the heading says it all.</param>
/// <param name="Address">Its page, beginning with a slash.</param>
public sealed record SearchHit(SearchKind Kind, string Heading, string Detail, string Address);

/// <summary>What a search found.</summary>
/// <param name="Hits">Grouped by kind, in the order of <see cref="SearchKind"/>; at most <see cref="SearchDesk.MostOfAKind"/> of each.</param>
/// <param name="Straight">Where a whole code or a case number leads; null when what was typed names nothing exactly.</param>
public sealed record SearchFound(IReadOnlyList<SearchHit> Hits, string? Straight)
{
    /// <summary>Why what looks like a code cannot be one; null where it is none, or leads somewhere.</summary>
    public Refusal? WrongCode { get; init; }

    /// <summary>Where all lots that fit are listed; null when they stand here.</summary>
    public string? AllLots { get; init; }

    /// <summary>Words that no seed goes by: what was found of seed does not rest on them.</summary>
    public IReadOnlyList<string> LeftOut { get; init; } = [];
}

/// <summary>Finds by one text whatever the actor may see: each kind asks for its own permission, and what may not be seen is not found.</summary>
public sealed class SearchDesk(IDbContextFactory<LibraryDbContext> factory, FindAnything seed, GuideShelf guides, PeopleDirectory people)
{
    public const int MostOfAKind = 8;
    public const int LongestText = 120;

    public async Task<SearchFound> FindAsync(Actor actor, string? text, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var asked = (text ?? "").Trim();
        if (asked.Length is 0 or > LongestText) return new SearchFound([], null);
        await using var db = await factory.CreateDbContextAsync(stop);
        var cases = await CasesAsync(db, actor, asked, stop);
        var packets = await PacketsAsync(db, asked, stop);
        var found = await seed.RunAsync(actor, asked, MostOfAKind, stop);
        var whole = packets;
        List<SearchHit> lots = [.. found.Lots.Where(lot => actor.IsVolunteer || lot.OnShelf > 0).Select(Lot)];

        // A packet's page is public, but only its whole code leads there; volunteers find it by the beginning too, and a borrower by its lot.
        var others = actor.IsVolunteer && CodeSearch.Beginning(asked) is not null
            ? [.. found.Packets.Select(packet => new SearchHit(SearchKind.Packet, packet.Code, packet.Name.Variety ?? "", "/p/" + packet.Code))]
            : await BorrowedAsync(db, actor, found.Lots, stop);
        packets = [.. packets, .. others.Where(other => packets.All(packet => packet.Address != other.Address))];

        // What was given, by whom and to whom is for those who keep the seed.
        List<SearchHit> accessions = actor.IsVolunteer ? [.. found.Accessions.Where(accession => accession.LotCode is not null).Select(Accession)] : [];
        var givers = actor.IsLibrarian ? await DonorsAsync(db, asked, found.Accessions, stop) : [];
        var libraries = actor.IsLibrarian ? await LibrariesAsync(db, asked, stop) : [];

        IReadOnlyList<SearchHit> hits = [.. cases, .. packets, .. lots, .. accessions, .. await GuidesAsync(asked, stop), .. await PeopleAsync(actor, asked, stop), .. givers, .. libraries];
        return new SearchFound(hits, Straight(asked, cases, whole, lots, accessions))
        {
            AllLots = found.MoreLots ? (actor.IsVolunteer ? "/lots?q=" : "/shelf?q=") + Uri.EscapeDataString(asked) : null,
            WrongCode = found.WrongCode,
            LeftOut = lots.Count > 0 ? [.. found.Words.Where(word => word.TakenFor is null).Select(word => word.Typed)] : [],
        };
    }

    private static async Task<List<SearchHit>> CasesAsync(LibraryDbContext db, Actor actor, string asked, CancellationToken stop)
    {
        var me = actor.UserId;
        var staff = actor.IsVolunteer;
        var hashes = (actor.GuestKey ?? "").Split(CaseAccess.KeySeparator, StringSplitOptions.RemoveEmptyEntries).Select(CaseAccess.HashOf).ToArray();
        var lower = asked.ToLowerInvariant();
        var number = CaseNumber(asked) ?? 0;
        var rows = await db.Set<CaseRow>().AsNoTracking()
            .Where(c => (me != null && (c.OwnerId == me || c.FiledForById == me)) || (c.GuestKeyHash != null && hashes.Contains(c.GuestKeyHash)) || (staff && c.FiledAt != null))
#pragma warning disable CA1304, CA1311, CA1862 // Becomes lower() in SQL, on both databases.
            .Where(c => c.Id == number || c.Title.ToLower().Contains(lower))
#pragma warning restore CA1304, CA1311, CA1862
            .OrderByDescending(c => c.Id == number).ThenByDescending(c => c.Id).Take(MostOfAKind).ToListAsync(stop);
        return rows.ConvertAll(row => new SearchHit(
            SearchKind.Case, row.Title, Say[$"Case {row.Id}"],
            string.Create(CultureInfo.InvariantCulture, $"/{(CaseAccess.SpeaksForOwner(actor, row) || CaseAccess.IsFinished(row) ? "cases" : "queue")}/{row.Id}")));
    }

    // A packet's page is public; only its code leads there.
    private static async Task<List<SearchHit>> PacketsAsync(LibraryDbContext db, string asked, CancellationToken stop)
    {
        var code = PacketCode.Read(asked).Match(read => read.ToString(), _ => "");
        if (code.Length == 0) return [];
        return await db.Set<PacketRow>().Where(p => p.Code == code && p.Standing != PacketStanding.Void)
            .Select(p => new SearchHit(SearchKind.Packet, p.Code, "", "/p/" + p.Code)).ToListAsync(stop);
    }

    private static async Task<List<SearchHit>> BorrowedAsync(LibraryDbContext db, Actor actor, IReadOnlyList<FoundLot> lots, CancellationToken stop)
    {
        if (actor.UserId is not { } me || lots.Count == 0) return [];
        var names = lots.ToDictionary(lot => lot.Code, lot => lot.Name.Variety);
        var codes = names.Keys.ToArray();
        var borrowed = await db.Set<LoanRow>().Where(loan => loan.BorrowerId == me && loan.Ending == null && !loan.IsVoid)
            .Join(db.Set<PacketRow>(), loan => loan.PacketId, packet => packet.Id, (loan, packet) => packet)
            .Join(db.Set<LotRow>().Where(lot => codes.Contains(lot.Code)), packet => packet.LotId, lot => lot.Id, (packet, lot) => new { packet.Id, packet.Code, Lot = lot.Code })
            .OrderBy(packet => packet.Id).Take(MostOfAKind).ToListAsync(stop);
        return borrowed.ConvertAll(packet => new SearchHit(SearchKind.Packet, packet.Code, names[packet.Lot] ?? "", "/p/" + packet.Code));
    }

    private async Task<List<SearchHit>> GuidesAsync(string asked, CancellationToken stop)
    {
        bool Names(string? name) => name?.Contains(asked, StringComparison.OrdinalIgnoreCase) == true;
        var found = new List<SearchHit>();
        foreach (var guide in (await guides.AllCurrentAsync(stop)).Select(g => g.Guide))
        {
            if (Names(guide.Crop)) found.Add(new SearchHit(SearchKind.Guide, guide.Crop, "", $"/guides/{guide.Id}"));
            found.AddRange(guide.Candidates.Where(c => Names(c.Name) || Names(c.Common)).Select(c => new SearchHit(SearchKind.Guide, c.Name, c.Common ?? "", $"/guides/{guide.Id}/{c.Id}")));
            found.AddRange(guide.Traits.Where(t => Names(t.Name)).Select(t => new SearchHit(SearchKind.Guide, t.Name, guide.Crop, $"/guides/{guide.Id}#{t.Id}")));
        }
        return [.. found.Take(MostOfAKind)];
    }

    private async Task<List<SearchHit>> PeopleAsync(Actor actor, string asked, CancellationToken stop)
    {
        if (!actor.IsLibrarian || asked.Length < 2) return [];
        var found = (await people.FindAsync(actor, asked, stop)).Match(list => list, _ => []);
        return [.. found.Where(p => !p.Erased).Take(MostOfAKind).Select(p => new SearchHit(SearchKind.Person, p.Name, p.Email, $"/people/{p.Id}"))];
    }

    // The donors of what was found by their words; a code finds seed, not people.
    private static async Task<List<SearchHit>> DonorsAsync(LibraryDbContext db, string asked, IReadOnlyList<FoundAccession> found, CancellationToken stop)
    {
        if (found.Count == 0 || CodeSearch.Beginning(asked) is not null) return [];
        var codes = found.Select(accession => accession.Code).ToArray();
        var donors = db.Set<AccessionRow>().Where(row => codes.Contains(row.Code) && row.Library == null).Select(row => row.DonorId);
        var rows = await db.Set<DonorRow>().AsNoTracking().Where(donor => donors.Contains(donor.Id) && donor.ErasedAt == null).OrderBy(donor => donor.Name).ThenBy(donor => donor.Id).Take(MostOfAKind).ToListAsync(stop);
        return rows.ConvertAll(row => new SearchHit(SearchKind.Donor, row.Name, row.Contact ?? "", $"/donors?q={Uri.EscapeDataString(row.Name)}"));
    }

    // Where seed was sent on to. Compared here word by word, so that both databases forgive the same accents and capitals; other libraries are few.
    private static async Task<List<SearchHit>> LibrariesAsync(LibraryDbContext db, string asked, CancellationToken stop)
    {
        var words = SearchText.Words(asked);
        if (words.Count == 0) return [];
        var names = await db.Set<SeedTransferRow>().Where(sent => !sent.IsVoid).Select(sent => sent.Library).Distinct().OrderBy(name => name).ToListAsync(stop);
        var fitting = names.Where(name => SearchText.Words(name) is var of && words.All(word => of.Any(part => part.StartsWith(word, StringComparison.Ordinal)))).ToArray();
        if (fitting.Length == 0) return [];
        var sent = await db.Set<SeedTransferRow>().AsNoTracking().Where(sent => fitting.Contains(sent.Library) && !sent.IsVoid).OrderByDescending(sent => sent.Entry).Take(MostOfAKind).ToListAsync(stop);
        var nodes = sent.Select(row => row.NodeId).Distinct().ToArray();
        var lots = await db.Set<LotRow>().Where(lot => nodes.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, lot => (lot.Code, Address: "/lots/" + lot.Code), stop);
        var packets = await db.Set<PacketRow>().Where(packet => nodes.Contains(packet.Id)).ToDictionaryAsync(packet => packet.Id, packet => (packet.Code, Address: "/p/" + packet.Code), stop);
        return [.. sent.Where(row => lots.ContainsKey(row.NodeId) || packets.ContainsKey(row.NodeId)).DistinctBy(row => (row.Library, row.NodeId)).Select(row =>
        {
            var (code, address) = lots.TryGetValue(row.NodeId, out var lot) ? lot : packets[row.NodeId];
            return new SearchHit(SearchKind.Library, row.Library, $"{code}, {Dates.Day(row.SentOn)}", address);
        })];
    }

    private static SearchHit Accession(FoundAccession accession) => new(
        SearchKind.Accession, accession.Code,
        string.Join(", ", new[] { accession.DeclaredName is { } name ? Quotes.Of(name) : null, accession.Donor, Dates.Day(accession.ReceivedOn), accession.LotCode }.OfType<string>()), $"/lots/{accession.LotCode}");

    // "24", "#24" and "case 24", in either language.
    private static long? CaseNumber(string asked)
    {
        var plain = CaseWords.Select(word => word + " ").FirstOrDefault(word => asked.StartsWith(word, StringComparison.OrdinalIgnoreCase)) is { } before ? asked[before.Length..].Trim() : asked;
        return long.TryParse(plain.TrimStart('#'), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    private static readonly string[] CaseWords = ["case", "caso"];

    private static SearchHit Lot(FoundLot lot) => new(
        SearchKind.Lot, lot.Name.Variety is { } name ? Quotes.Of(name) : lot.Code, string.Create(CultureInfo.InvariantCulture, $"{lot.Code}, {lot.Year}"), $"/lots/{lot.Code}");

    private static string? Straight(string asked, List<SearchHit> cases, List<SearchHit> packets, List<SearchHit> lots, List<SearchHit> accessions)
    {
        if (packets is [var packet]) return packet.Address;
        var lot = LotCode.Read(asked).Match(read => read.ToString(), _ => "");
        if (lot.Length > 0 && lots.FirstOrDefault(l => l.Address == $"/lots/{lot}") is { } found) return found.Address;
        var accession = AccessionCode.Read(asked).Match(read => read.ToString(), _ => "");
        if (accession.Length > 0 && accessions.FirstOrDefault(a => a.Heading == accession) is { } came) return came.Address;
        return CaseNumber(asked) is { } number ? cases.FirstOrDefault(c => c.Address.EndsWith(string.Create(CultureInfo.InvariantCulture, $"/{number}"), StringComparison.Ordinal))?.Address : null;
    }
}
