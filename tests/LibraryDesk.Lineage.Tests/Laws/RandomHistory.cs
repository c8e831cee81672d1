using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests.Laws;

/// <summary>A library that does acts of every kind at random, counted and weighed, as the rules allow them, and keeps its own book of what came in and went out.</summary>
internal sealed class RandomHistory
{
    private static readonly DateOnly _today = new(2026, 11, 25);
    private readonly Random _random;
    private readonly List<LotId> _lots = [];
    private readonly List<PacketId> _packets = [];
    private readonly List<LoanId> _loans = [];
    private readonly List<GrowOutId> _growOuts = [];
    private readonly List<RequestId> _requests = [];
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

    /// <summary>What came in less what went out.</summary>
    public SeedBook Booked { get; private set; }

    public static SeedState Rebuilt(IEnumerable<LedgerEntry> entries)
    {
        var state = new SeedState();
        foreach (var entry in entries) state.Apply(entry);
        return state;
    }

    private bool Do(SeedAct act)
    {
        var entry = Chain.Append(Head, new DateTimeOffset(_day, TimeOnly.MinValue, TimeSpan.Zero), TestLibrary.Person(_random.Next(1, 9)), act);
        State.Apply(entry);
        Entries.Add(entry);
        Head = Chain.HeadAfter(entry);
        Booked += SeedBook.Of(act);
        Remember(act);
        return true;
    }

    private bool Refuse(Refusal refusal)
    {
        Refusals++;
        return false;
    }

    private void Remember(SeedAct act)
    {
        switch (act)
        {
            case LotMade made: _lots.Add(made.Lot); break;
            case Packeted packeted: _packets.AddRange(packeted.Packets.Select(packet => packet.Packet)); break;
            case Lent lent: _loans.Add(lent.Loan); break;
            case GrownOut grown: _growOuts.Add(grown.GrowOut); break;
            case Requested requested: _requests.Add(requested.Request); break;
            case Corrected corrected: _corrected.Add(corrected.Entry); break;
            default: break;
        }
    }

    private Outcome<SeedAct>? Choose()
    {
        if (_lots.Count == 0 && _random.Next(2) == 0 && FromAccession() is { } first) return first;
        if (_lots.Count == 0) return Receive();
        var lot = State.Find(_lots[_random.Next(_lots.Count)])!;
        return _random.Next(19) switch
        {
            0 => Receive(),
            1 => FromAccession(),
            2 => Of(PackingRules.PutUp(lot, Holds(lot.Id.Node), Enumerable.Range(0, _random.Next(1, 6)).Select(_ => new NewPacket(Ids.Next<PacketId>(), new('Q', _day.Year, ++_code), Some(lot.Stock.Unit, 20))).ToArray(), _day, null, _today)),
            3 => Of(LotRules.Blend(New(), [Taking(lot), Taking(State.Find(_lots[_random.Next(_lots.Count)])!)], _today)),
            4 => Of(LotRules.Split(New(), Taking(lot), _today)),
            5 => Of(StockRules.Test(Ids.Next<TestId>(), lot, [], [new(20, _random.Next(21))], _day, 14, _random.Next(2) == 0, _today, isSure: true)),
            6 => Of(StockRules.Count(SeedStock.Of(lot), new Quantity(Math.Max(0, lot.Stock.Amount + _random.Next(-5, 6)), lot.Stock.Unit), null, _day, "counted again", _today, isSure: true)),
            7 => Of(StockRules.Discard(SeedStock.Of(lot), Some(SeedUnit.Seeds, 30), _day, "mouldy", _today)),
            8 => Of(StockRules.SendOn(SeedStock.Of(lot), Holds(lot.Id.Node), Some(SeedUnit.Seeds, 10), "Harrow Fen", _day, _today)),
            9 => Of(HoldRules.Hold(Ids.Next<HoldId>(), lot.Id.Node, lot.MadeOn, HoldReason.NameInDoubt, Holds(lot.Id.Node), _day, _today)),
            10 => Release(),
            11 => Correct(),
            12 => Of(NamingRules.Claim(new(Ids.Next<ClaimId>(), lot.Id.Node, lot.Species, $"Name {_random.Next(9)}", ClaimGrounds.GrowersWord, TestLibrary.Person(3), _day, null), lot.MadeOn, new HashSet<NodeId>(), _today)),
            13 => WithRequest(lot),
            14 => _random.Next(5) > 0 ? null : Of(HoldRules.Recall(Ids.Next<HoldId>(), lot.Id.Node, lot.MadeOn, Holds(lot.Id.Node), "off-types came up", [.. State.Packets.Where(packet => packet.Lot == lot.Id).Select(packet => packet.Id)], _day, _today)),
            15 => lot.IsVoid ? null : Of(StockRules.Move(lot.Id.Node, lot.MadeOn, lot.Place, $"C-{_random.Next(20)}", _day, _today)),
            _ => WithPacket(),
        };
    }

    private Outcome<SeedAct> Receive()
    {
        var unit = _random.Next(3) == 0 ? SeedUnit.Milligrams : SeedUnit.Seeds;
        long? thousand = _random.Next(3) == 0 ? null : _random.Next(3000, 9000);
        return _random.Next(4) == 0
            ? Of(ReceivingRules.TransferIn(new(Ids.Next<AccessionId>(), new(_day.Year, ++_code), "Weir Seed Library", $"W-{_code}", null, _day, "a", null, Some(unit, 2000), thousand), _today))
            : Of(ReceivingRules.Receive(new(Ids.Next<AccessionId>(), new(_day.Year, ++_code), null, _day, _random.Next(3) == 0 ? "b" : "a", null, Some(unit, 2000), thousand, SeedSource.Donor, null), _today));
    }

    private Outcome<SeedAct>? FromAccession()
    {
        var accession = State.Accessions.LastOrDefault(accession => !accession.IsVoid && !accession.Stock.IsEmpty);
        return accession is null ? null : Of(LotRules.FromAccession(New(), new(SeedStock.Of(accession), accession.Species, null, []), _today));
    }

    private Outcome<SeedAct>? WithRequest(Lot lot)
    {
        if (_requests.Count == 0 || _random.Next(3) == 0)
        {
            var onShelf = State.Packets.Count(packet => packet.Lot == lot.Id && packet.Standing == PacketStanding.OnShelf);
            return Of(LendingRules.Request(Ids.Next<RequestId>(), lot, onShelf, Holds(lot.Id.Node), TestLibrary.Person(6)));
        }

        var request = State.Find(_requests[^_random.Next(1, Math.Min(8, _requests.Count + 1))])!;
        var packet = request.Picked is { } picked ? State.Find(picked) : State.Packets.FirstOrDefault(packet => packet.Lot == request.Lot && packet.Standing == PacketStanding.OnShelf);
        if (packet is null) return null;
        return request.Picked is null
            ? Of(LendingRules.Pick(request, packet, Holds(packet.Lot.Node)))
            : Of(LendingRules.Lend(Ids.Next<LoanId>(), packet, Holds(packet.Lot.Node), request, request.By, _day, null, _today));
    }

    private Outcome<SeedAct>? WithPacket()
    {
        if (_growOuts.Count > 0 && _random.Next(3) == 0) return WithHarvest();
        if (_loans.Count > 0 && _random.Next(3) == 0) return WithLoan();
        if (_packets.Count == 0) return FromAccession();
        var packet = State.Find(_packets[_random.Next(_packets.Count)])!;
        return _random.Next(5) switch
        {
            0 => Of(GrowingRules.SowPacket(Ids.Next<GrowOutId>(), packet, null, null, _day, GrowOutFacts.NotTold, _today)),
            1 => Of(StockRules.Discard(packet, _day, "torn", _today)),
            2 => Of(StockRules.Count(SeedStock.Of(packet), new Quantity(Math.Max(0, packet.Stock.Amount + _random.Next(-2, 3)), packet.Stock.Unit), null, _day, "recounted", _today, isSure: true)),
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
            ? Of(GrowingRules.Return(growOut, loan, null, _day, Some(_random.Next(3) == 0 ? SeedUnit.Milligrams : SeedUnit.Seeds, 500), _random.Next(3000, 9000), _today))
            : Of(LotRules.FromHarvest(New(), new(SeedStock.Of(growOut), "a", null, []), _today));
    }

    private Outcome<SeedAct>? Release()
    {
        var hold = State.Holds.FirstOrDefault(hold => hold.Stands);
        return hold is null ? null : Of(HoldRules.Release(hold, _day, "settled", _today));
    }

    // The rule tries the correction on a copy.
    private Outcome<SeedAct>? Correct()
    {
        if (Entries.Count < 5) return null;
        var entry = Entries[^_random.Next(1, Math.Min(30, Entries.Count))];
        SeedAct? instead = entry.ReadAct() switch
        {
            Discarded thrown when _random.Next(2) == 0 => thrown with { Seed = new Quantity((thrown.Seed.Amount + 1) / 2, thrown.Seed.Unit) },
            Accessioned came when _random.Next(2) == 0 => came with { DeclaredName = "Read again" },
            Moved moved when _random.Next(2) == 0 => moved with { To = "D-1" },
            _ => null,
        };
        return Of(CorrectionRules.Correct(entry, _corrected.Contains(entry.Sequence), instead, "typed wrongly", CopyOfState()));
    }

    private SeedState CopyOfState()
    {
        var copy = new SeedState();
        foreach (var record in State.Accessions) copy.Put(record);
        foreach (var record in State.Lots) copy.Put(record);
        foreach (var record in State.Packets) copy.Put(record);
        foreach (var record in State.GrowOuts) copy.Put(record);
        foreach (var record in State.Loans) copy.Put(record);
        foreach (var record in State.Requests) copy.Put(record);
        foreach (var record in State.Holds) copy.Put(record);
        foreach (var record in State.Claims) copy.Put(record);
        foreach (var record in State.Tests) copy.Put(record);
        foreach (var record in State.Transfers) copy.Put(record);
        return copy;
    }

    private Quantity Some(SeedUnit unit, int most) => unit == SeedUnit.Seeds ? Quantity.OfSeeds(_random.Next(0, most + 1)) : Quantity.OfMilligrams(_random.Next(0, (most * 6) + 1));

    private NewLot New() => new(Ids.Next<LotId>(), new LotCode(_day.Year, ++_code), _day, null, null);

    private LotTaking Taking(Lot lot) => new(SeedStock.Of(lot), lot.Species, Some(_random.Next(3) == 0 ? SeedUnit.Milligrams : SeedUnit.Seeds, 100), Holds(lot.Id.Node));

    private Hold[] Holds(NodeId node) => State.Holds.Where(hold => hold.Node == node).ToArray();

    private static Outcome<SeedAct> Of<T>(Outcome<T> outcome)
        where T : SeedAct => outcome.Match<Outcome<SeedAct>>(act => act, refusal => refusal);
}
