using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>
/// An invented library over thirty seasons: every entry is chained and applied by the lineage core itself, so the ledger is sound and the
/// state is what it says. Five packets of each lot; a lot comes from a donor (all in the first season, one in twenty later), from a blend of two
/// (one in thirty), or from the harvest of a packet of the two seasons before that somebody borrowed and brought back.
/// </summary>
/// <param name="packets">How many packets; a fifth as many lots.</param>
/// <param name="seed">Two libraries of the same seed are the same.</param>
internal sealed class LargeLibrary(int packets, int seed)
{
    public const int Seasons = 30;
    private const int PacketsOfLot = 5;
    private const int FirstYear = 1997;
    private static readonly string[] Species = ["capsicum-annuum", "capsicum-annuum", "capsicum-annuum", "capsicum-chinense", "capsicum-baccatum", "capsicum-frutescens", "capsicum-pubescens"];

    private readonly Random _random = new(seed);
    private readonly InventedNames _names = new(new Random(seed + 2), Math.Max(400, packets / 100));
    private readonly Guid[] _members = People(seed, 2000);
    private readonly PersonId _librarian = new(new Guid(1, 0, 0, new byte[8]));
    private readonly Dictionary<(string Kind, int Year), int> _series = [];
    private List<PacketId> _onShelf = [];
    private List<LotId> _lots = [];
    private DateTimeOffset _clock = new(FirstYear, 1, 10, 9, 0, 0, TimeSpan.Zero);

    public SeedState State { get; } = new();

    public SeedIds Ids { get; } = new(0);

    public ChainHead Head { get; private set; }

    public IReadOnlyDictionary<(string Kind, int Year), int> Series => _series;

    /// <summary>Everybody who gives and borrows.</summary>
    public IReadOnlyList<Guid> Members => _members;

    /// <summary>The entries, from the first; the state grows as they are read.</summary>
    public IEnumerable<LedgerEntry> Entries()
    {
        var before = new List<PacketId>();
        for (var season = 0; season < Seasons; season++)
        {
            var year = FirstYear + season;
            _clock = new(year, 1, 10, 9, 0, 0, TimeSpan.Zero);
            var candidates = before;
            before = _onShelf;
            candidates.AddRange(before);
            _onShelf = [];
            _lots = [];
            var lots = packets / PacketsOfLot / Seasons;
            if (season == 0) lots += (packets / PacketsOfLot) - (lots * Seasons);
            for (var lot = 0; lot < lots; lot++)
            {
                foreach (var act in Lot(year, candidates)) yield return Append(act);
            }

            for (var loan = 0; loan < lots / 2; loan++)
            {
                if (Free(_onShelf) is { } packet) yield return Append(new Lent(Ids.Next<LoanId>(), packet, Member(), new(year, 11, 20), null, null));
            }
        }
    }

    private LedgerEntry Append(SeedAct act)
    {
        _clock = _clock.AddSeconds(20);
        var entry = Chain.Append(Head, _clock, _librarian, act);
        State.Apply(entry);
        Head = Chain.HeadAfter(entry);
        return entry;
    }

    private IEnumerable<SeedAct> Lot(int year, List<PacketId> candidates)
    {
        var id = default(LotId);
        var chance = _random.Next(60);
        if (chance < 2 && _lots.Count > 20 && Blend(year) is { } blend)
        {
            id = blend.Lot;
            yield return blend;
        }
        else if (chance >= 5 && Free(candidates) is { } packet)
        {
            var (loan, growOut, grower) = (Ids.Next<LoanId>(), Ids.Next<GrowOutId>(), Member());
            var lent = State.Find(packet)!;
            yield return new Lent(loan, packet, grower, new(year, 3, 20), new(year, 10, 31), null);
            var grown = _random.Next(6, 40);
            yield return new GrownOut(growOut, packet.Node, loan, grower, new(year, 4, 1), lent.Stock, new(grown, grown - 2, 1, 1, Isolation.Distance, 40, true, HarvestManner.Bulked, new(year, 9, 10)));
            var seed = Quantity.OfSeeds(_random.Next(200, 900));
            yield return new Returned(growOut, loan, grower, new(year, 9, 20), seed, 6500);
            id = Ids.Next<LotId>();
            yield return new LotMade(id, LotCode(year), LotOrigin.Harvest, [new(growOut.Node, seed, seed, seed.Amount)], State.Find(lent.Lot)!.Species, new(year, 10, 1), SeedUnit.Seeds, 6500, $"C-{_random.Next(400)}");
        }
        else
        {
            var (accession, seed, species) = (Ids.Next<AccessionId>(), Quantity.OfSeeds(_random.Next(200, 900)), Species[_random.Next(Species.Length)]);
            var (donor, name) = (Member(), _names.Variety(_random));
            yield return new Accessioned(accession, AccessionCode(year), donor, new(year, 2, 1), species, name, seed, 6500, SeedSource.Donor, year - 1);
            yield return new Named(Ids.Next<ClaimId>(), accession.Node, species, name, ClaimGrounds.DonorsWord, donor, new(year, 2, 1), null);
            id = Ids.Next<LotId>();
            yield return new LotMade(id, LotCode(year), LotOrigin.Intake, [new(accession.Node, seed, seed, seed.Amount)], species, new(year, 2, 2), SeedUnit.Seeds, 6500, $"C-{_random.Next(400)}");
        }

        var put = Enumerable.Range(0, PacketsOfLot).Select(_ => new NewPacket(Ids.Next<PacketId>(), PacketCode(year), Quantity.OfSeeds(20))).ToArray();
        yield return new Packeted(id, new(year, 11, 2), put, null);
        _lots.Add(id);
        _onShelf.AddRange(put.Select(packet => packet.Packet));
    }

    private LotMade? Blend(int year)
    {
        var (one, other) = (State.Find(_lots[_random.Next(_lots.Count)])!, State.Find(_lots[_random.Next(_lots.Count)])!);
        if (one.Id == other.Id || one.Species != other.Species || one.Stock.Amount < 100 || other.Stock.Amount < 100) return null;
        LotSource From(Lot lot) => new(lot.Id.Node, Quantity.OfSeeds(100), Quantity.OfSeeds(100), 100);
        return new(Ids.Next<LotId>(), LotCode(year), LotOrigin.Blend, [From(one), From(other)], one.Species, new(year, 11, 1), SeedUnit.Seeds, 6500, null);
    }

    // Takes one packet out of the list at random, if it still stands on the shelf.
    private PacketId? Free(List<PacketId> from)
    {
        while (from.Count > 0)
        {
            var place = _random.Next(from.Count);
            var packet = from[place];
            from[place] = from[^1];
            from.RemoveAt(from.Count - 1);
            if (State.Find(packet)!.Standing == PacketStanding.OnShelf) return packet;
        }

        return null;
    }

    private PersonId Member() => new(_members[_random.Next(_members.Length)]);

    private LotCode LotCode(int year) => new(CodeYear(year), Next("L", year));

    private AccessionCode AccessionCode(int year) => new(CodeYear(year), Next("A", year));

    private PacketCode PacketCode(int year) => new('Q', CodeYear(year), Next("P", year));

    private int Next(string kind, int year) => _series[(kind, CodeYear(year))] = _series.GetValueOrDefault((kind, CodeYear(year))) + 1;

    // Codes begin at 2000: older seed carries the year it was written down.
    private static int CodeYear(int year) => Math.Max(2000, year);

    private static Guid[] People(int seed, int count)
    {
        var random = new Random(seed + 1);
        var bytes = new byte[16];
        return Enumerable.Range(0, count).Select(_ =>
        {
            random.NextBytes(bytes);
            return new Guid(bytes);
        }).ToArray();
    }
}
