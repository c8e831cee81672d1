using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Desk.LetterText;

namespace LibraryDesk.Desk.Search;

/// <summary>What was found: a case, a packet, a lot, a person, a page of a crop guide.</summary>
public enum SearchKind
{
    Case,
    Packet,
    Lot,
    Guide,
    Person,
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

        IReadOnlyList<SearchHit> hits = [.. cases, .. packets, .. lots, .. await GuidesAsync(asked, stop), .. await PeopleAsync(actor, asked, stop)];
        return new SearchFound(hits, Straight(asked, cases, whole, lots))
        {
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
        var number = long.TryParse(asked.TrimStart('#'), NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : 0;
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

    private static SearchHit Lot(FoundLot lot) => new(
        SearchKind.Lot, lot.Name.Variety is { } name ? $"‘{name}’" : lot.Code, string.Create(CultureInfo.InvariantCulture, $"{lot.Code}, {lot.Year}"), $"/lots/{lot.Code}");

    private static string? Straight(string asked, List<SearchHit> cases, List<SearchHit> packets, List<SearchHit> lots)
    {
        if (packets is [var packet]) return packet.Address;
        var lot = LotCode.Read(asked).Match(read => read.ToString(), _ => "");
        if (lot.Length > 0 && lots.FirstOrDefault(l => l.Address == $"/lots/{lot}") is { } found) return found.Address;
        return asked.TrimStart('#').All(char.IsAsciiDigit) ? cases.FirstOrDefault(c => c.Address.EndsWith($"/{asked.TrimStart('#')}", StringComparison.Ordinal))?.Address : null;
    }
}
