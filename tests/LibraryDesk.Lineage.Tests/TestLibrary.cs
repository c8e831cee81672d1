using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Tests;

/// <summary>A library in memory: a ledger, its state, and the next free numbers.</summary>
internal sealed class TestLibrary
{
    public static readonly PersonId Librarian = Person(1);
    public static readonly PersonId Member = Person(2);
    public static readonly PersonId Donor = Person(3);

    private int _codes;

    public List<LedgerEntry> Entries { get; } = [];

    public SeedState State { get; } = new();

    public SeedIds Ids { get; } = new(0);

    public ChainHead Head { get; private set; }

    public DateOnly Today { get; } = new(2026, 11, 25);

    public static PersonId Person(int number) => new(new Guid(number, 0, 0, new byte[8]));

    public static DateOnly Day(int year, int month = 3, int day = 1) => new(year, month, day);

    public SeedChanges Do(SeedAct act)
    {
        var entry = Chain.Append(Head, new DateTimeOffset(2026, 1, 1, 9, 0, 0, TimeSpan.Zero).AddMinutes(Entries.Count), Librarian, act);
        var changes = State.Apply(entry);
        Entries.Add(entry);
        Head = Chain.HeadAfter(entry);
        return changes;
    }

    public T Do<T>(Outcome<T> outcome)
        where T : SeedAct
    {
        var act = outcome.Match(act => act, no => throw new InvalidOperationException(no.Message));
        Do(act);
        return act;
    }

    public Accession Receive(Quantity seed, int year = 2020, string? species = "capsicum-annuum", string? name = "Ember", long? thousand = 6200, SeedSource source = SeedSource.Donor)
    {
        var act = Do(ReceivingRules.Receive(new Accessioned(Ids.Next<AccessionId>(), new AccessionCode(year, ++_codes), Donor, Day(year), species, name, seed, thousand, source, null), Today));
        return State.Find(act.Accession)!;
    }

    public Lot LotOf(Accession accession, Quantity? seed = null)
    {
        var act = Do(LotRules.FromAccession(New(accession.ReceivedOn), new(SeedStock.Of(State.Find(accession.Id)!), accession.Species, seed, []), Today));
        return State.Find(act.Lot)!;
    }

    public Lot Lot(long seeds, int year = 2020, string? species = "capsicum-annuum") => LotOf(Receive(Quantity.OfSeeds(seeds), year, species));

    public Lot Blend(DateOnly on, params (Lot Lot, Quantity? Seed)[] parts)
    {
        var act = Do(LotRules.Blend(New(on), parts.Select(part => Taking(part.Lot, part.Seed)).ToArray(), Today));
        return State.Find(act.Lot)!;
    }

    public LotTaking Taking(Lot lot, Quantity? seed, params Hold[] holds) => new(SeedStock.Of(State.Find(lot.Id)!), lot.Species, seed, holds);

    public NewLot New(DateOnly on, long? thousand = null) => new(Ids.Next<LotId>(), new LotCode(on.Year, ++_codes), on, thousand, null);

    public IReadOnlyList<Packet> PutUp(Lot lot, int packets, long seedsEach, DateOnly? on = null)
    {
        var wanted = Enumerable.Range(0, packets).Select(_ => new NewPacket(Ids.Next<PacketId>(), new PacketCode('Q', 2026, ++_codes), Quantity.OfSeeds(seedsEach))).ToArray();
        Do(PackingRules.PutUp(State.Find(lot.Id)!, [], wanted, on ?? lot.MadeOn, null, Today));
        return wanted.Select(packet => State.Find(packet.Packet)!).ToArray();
    }

    public Loan Lend(Packet packet, PersonId? to = null, DateOnly? on = null)
    {
        var act = Do(LendingRules.Lend(Ids.Next<LoanId>(), State.Find(packet.Id)!, [], null, to ?? Member, on ?? packet.PackedOn, null, Today));
        return State.Find(act.Loan)!;
    }

    public GrowOut Grow(Packet packet, Loan? loan, DateOnly? on = null, GrowOutFacts? facts = null)
    {
        var act = Do(GrowingRules.SowPacket(Ids.Next<GrowOutId>(), State.Find(packet.Id)!, loan, loan?.Borrower, on ?? packet.PackedOn, facts ?? GrowOutFacts.NotTold, Today));
        return State.Find(act.GrowOut)!;
    }

    public Lot Harvest(GrowOut growOut, long seeds, DateOnly on, Loan? loan = null)
    {
        Do(GrowingRules.Return(State.Find(growOut.Id)!, loan, Member, on, Quantity.OfSeeds(seeds), null, Today));
        var act = Do(LotRules.FromHarvest(New(on), new(SeedStock.Of(State.Find(growOut.Id)!), "capsicum-annuum", null, []), Today));
        return State.Find(act.Lot)!;
    }

    public Hold Hold(NodeId node, HoldReason reason = HoldReason.NameInDoubt)
    {
        var act = Do(HoldRules.Hold(Ids.Next<HoldId>(), node, Day(2020), reason, [], Day(2026), Today));
        return State.Find(act.Hold)!;
    }
}
