using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Laws;

/// <summary>
/// A library that does acts at random, as the rules allow them, and keeps its own book of what came in and went out. The book knows nothing of
/// the state: it is the other side of the scales.
/// </summary>
internal sealed class RandomHistory
{
    private static readonly DateOnly _today = new(2026, 11, 25);
    private readonly Random _random;
    private readonly List<LotId> _lots = [];
    private readonly List<PacketId> _packets = [];
    private readonly List<LoanId> _loans = [];
    private readonly List<GrowOutId> _growOuts = [];
    private readonly HashSet<long> _corrected = [];
    private DateOnly _day = new(2010, 1, 1);
    private int _code;

    public RandomHistory(int seed, int acts)
    {
        _random = new Random(seed);
        while (Entries.Count < acts)
        {
            if (_random.Next(4) == 0 && _day < _today.AddDays(-1)) _day = _day.AddDays(1);
            if (Choose() is { } outcome) outcome.Match(Do, Refuse);
        }
    }

    public List<LedgerEntry> Entries { get; } = [];

    public SeedState State { get; } = new();

    public SeedIds Ids { get; } = new(0);

    public ChainHead Head { get; private set; }

    public int Refusals { get; private set; }

    /// <summary>Seeds that came in less seeds that went out, by the acts alone.</summary>
    public long Booked { get; private set; }

    /// <summary>Seeds that the state says are there.</summary>
    public static long There(SeedState state) =>
        state.Accessions.Sum(accession => accession.Stock.Amount) + state.Lots.Sum(lot => lot.Stock.Amount)
        + state.Packets.Sum(packet => packet.Stock.Amount) + state.GrowOuts.Sum(growOut => growOut.Stock?.Amount ?? 0);

    private bool Do(SeedAct act)
    {
        var entry = Chain.Append(Head, new DateTimeOffset(_day, TimeOnly.MinValue, TimeSpan.Zero), TestLibrary.Person(_random.Next(1, 9)), act);
        State.Apply(entry);
        Entries.Add(entry);
        Head = Chain.HeadAfter(entry);
        Booked += act is Corrected corrected ? -Net(corrected.Was.Act) : Net(act);
        Remember(act);
        return true;
    }

    private bool Refuse(Refusal refusal)
    {
        Refusals++;
        return false;
    }

    private static long Net(SeedAct act) => act switch
    {
        Accessioned came => came.Received.Amount,
        Returned came => came.Seed.Amount,
        LoanEnded ended => -ended.Used.Amount,
        GrownOut grown => -grown.Sown.Amount,
        GerminationTested tested => -tested.Used.Amount,
        Counted counted => counted.Found.Amount - counted.Expected.Amount,
        Discarded discarded => -discarded.Seed.Amount,
        TransferredOut sent => -sent.Seed.Amount,
        _ => 0,
    };

    private void Remember(SeedAct act)
    {
        switch (act)
        {
            case LotMade made: _lots.Add(made.Lot); break;
            case Packeted packeted: _packets.AddRange(packeted.Packets.Select(packet => packet.Packet)); break;
            case Lent lent: _loans.Add(lent.Loan); break;
            case GrownOut grown: _growOuts.Add(grown.GrowOut); break;
            case Corrected corrected: _corrected.Add(corrected.Entry); break;
            default: break;
        }
    }

    private Outcome<SeedAct>? Choose()
    {
        var kind = _random.Next(14);
        if (_lots.Count == 0 && _random.Next(2) == 0 && FromAccession() is { } first) return first;
        if (_lots.Count == 0 || kind == 0) return Of(ReceivingRules.Receive(new(Ids.Next<AccessionId>(), new(_day.Year, ++_code), null, _day, _random.Next(3) == 0 ? "b" : "a", null, Seeds(2000), null, SeedSource.Donor, null), _today));
        var lot = State.Find(_lots[_random.Next(_lots.Count)])!;
        return kind switch
        {
            1 => FromAccession(),
            2 => Of(PackingRules.PutUp(lot, Holds(lot.Id.Node), Enumerable.Range(0, _random.Next(1, 6)).Select(_ => new NewPacket(Ids.Next<PacketId>(), new('Q', _day.Year, ++_code), Seeds(20))).ToArray(), _day, null, _today)),
            3 => Of(LotRules.Blend(New(), [Taking(lot), Taking(State.Find(_lots[_random.Next(_lots.Count)])!)], _today)),
            4 => Of(LotRules.Split(New(), Taking(lot), _today)),
            5 => Of(StockRules.Test(Ids.Next<TestId>(), lot, [new(20, _random.Next(21))], _day, 14, _random.Next(2) == 0, _today)),
            6 => Of(StockRules.Count(SeedStock.Of(lot), Quantity.OfSeeds(Math.Max(0, lot.Stock.Amount + _random.Next(-5, 6))), null, _day, "counted again", _today)),
            7 => Of(StockRules.Discard(SeedStock.Of(lot), Seeds(30), _day, "mouldy", _today)),
            8 => Of(StockRules.SendOn(SeedStock.Of(lot), Holds(lot.Id.Node), Seeds(10), "Harrow Fen", _day, _today)),
            9 => Of(HoldRules.Hold(Ids.Next<HoldId>(), lot.Id.Node, lot.MadeOn, HoldReason.NameInDoubt, Holds(lot.Id.Node), _day, _today)),
            10 => Release() ?? (lot.IsVoid ? null : Of(StockRules.Move(lot.Id.Node, lot.MadeOn, lot.Place, $"C-{_random.Next(20)}", _day, _today))),
            11 => Correct(),
            _ => WithPacket(),
        };
    }

    private Outcome<SeedAct>? FromAccession()
    {
        var accession = State.Accessions.LastOrDefault(accession => !accession.IsVoid && !accession.Stock.IsEmpty);
        return accession is null ? null : Of(LotRules.FromAccession(New(), new(SeedStock.Of(accession), accession.Species, null, []), _today));
    }

    private Outcome<SeedAct>? WithPacket()
    {
        if (_growOuts.Count > 0 && _random.Next(3) == 0) return WithHarvest();
        if (_loans.Count > 0 && _random.Next(3) == 0) return WithLoan();
        if (_packets.Count == 0) return FromAccession();
        var packet = State.Find(_packets[_random.Next(_packets.Count)])!;
        return _random.Next(3) switch
        {
            0 => Of(GrowingRules.SowPacket(Ids.Next<GrowOutId>(), packet, null, null, _day, GrowOutFacts.NotTold, _today)),
            1 => Of(StockRules.Discard(packet, _day, "torn", _today)),
            _ => Of(LendingRules.Lend(Ids.Next<LoanId>(), packet, Holds(packet.Lot.Node), null, TestLibrary.Person(5), _day, null, _today)),
        };
    }

    private Outcome<SeedAct> WithLoan()
    {
        var loan = State.Find(_loans[_random.Next(_loans.Count)])!;
        var packet = State.Find(loan.Packet)!;
        return _random.Next(2) == 0
            ? Of(LendingRules.End(loan, packet, (LoanEnding)_random.Next(1, 5), _day, _today))
            : Of(GrowingRules.SowPacket(Ids.Next<GrowOutId>(), packet, loan, loan.Borrower, _day, GrowOutFacts.NotTold, _today));
    }

    private Outcome<SeedAct> WithHarvest()
    {
        var growOut = State.Find(_growOuts[_random.Next(_growOuts.Count)])!;
        var loan = growOut.Loan is { } id ? State.Find(id) : null;
        return _random.Next(2) == 0
            ? Of(GrowingRules.Return(growOut, loan, null, _day, Seeds(500), null, _today))
            : Of(LotRules.FromHarvest(New(), new(SeedStock.Of(growOut), "a", null, []), _today));
    }

    private Outcome<SeedAct>? Release()
    {
        var hold = State.Holds.FirstOrDefault(hold => hold.Stands);
        return hold is null ? null : Of(HoldRules.Release(hold, _day, "settled", _today));
    }

    // The rule tries a correction on a slice of its own; here that is a rebuild, so only some are tried.
    private Outcome<SeedAct>? Correct()
    {
        if (Entries.Count < 5 || _random.Next(6) > 0) return null;
        var entry = Entries[^_random.Next(1, Math.Min(30, Entries.Count))];
        return Of(CorrectionRules.Correct(entry, _corrected.Contains(entry.Sequence), null, "typed wrongly", Rebuilt(Entries)));
    }

    public static SeedState Rebuilt(IEnumerable<LedgerEntry> entries)
    {
        var state = new SeedState();
        foreach (var entry in entries) state.Apply(entry);
        return state;
    }

    private Quantity Seeds(int most) => Quantity.OfSeeds(_random.Next(0, most + 1));

    private NewLot New() => new(Ids.Next<LotId>(), new LotCode(_day.Year, ++_code), _day, null, null);

    private LotTaking Taking(Lot lot) => new(SeedStock.Of(lot), lot.Species, Seeds(100), Holds(lot.Id.Node));

    private Hold[] Holds(NodeId node) => State.Holds.Where(hold => hold.Node == node).ToArray();

    private static Outcome<SeedAct> Of<T>(Outcome<T> outcome)
        where T : SeedAct => outcome.Match<Outcome<SeedAct>>(act => act, refusal => refusal);
}
