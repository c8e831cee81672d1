using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>Applies one entry to a state. Guards what must hold whatever the rules of the day: no stock below nothing, no parent younger than its child, no id twice.</summary>
internal sealed class SeedReplay(SeedState state, long sequence)
{
    public void Apply(SeedAct act)
    {
        switch (act)
        {
            case Accessioned accessioned: Accession(accessioned); break;
            case TransferredIn transferred: Accession(transferred); break;
            case LotMade made: Make(made); break;
            case Packeted packeted: Packet(packeted); break;
            case Requested requested: state.Put(new SeedRequest(requested.Request, Lot(requested.Lot).Id, requested.By, null, null)); break;
            case Picked picked: Pick(picked); break;
            case Lent lent: Lend(lent); break;
            case LoanEnded ended: End(ended); break;
            case GrownOut grown: Grow(grown); break;
            case Returned returned: Return(returned); break;
            case GerminationTested tested: Test(tested); break;
            case Named named: state.Put(new NameClaim(named.Claim, named.Node, named.Species, named.Variety, named.Grounds, named.By, named.ClaimedOn, named.Evidence)); break;
            case Held held: state.Put(new Hold(held.Hold, held.Node, held.Reason, held.HeldOn, null, null)); break;
            case Recalled recalled: state.Put(new Hold(recalled.Hold, recalled.Node, HoldReason.Recall, recalled.RecalledOn, null, null)); break;
            case Released released: Release(released); break;
            case Moved moved: Move(moved.Node, moved.To); break;
            case Counted counted: Count(counted); break;
            case Discarded discarded: Take(discarded.Node, discarded.Seed, PacketStanding.Discarded); break;
            case TransferredOut transferred: SendAway(transferred); break;
            case Corrected corrected: new SeedUndo(state, this, sequence).Correct(corrected); break;
            default: throw Misfit($"no way to apply {act.Kind} is known.");
        }
    }

    public LedgerMisfitException Misfit(string why) => new(sequence, why);

    public Lot Lot(LotId id) => state.Find(id) is { IsVoid: false } lot ? lot : throw Misfit($"lot {id.Value} is not there.");

    public Packet Packet(PacketId id) =>
        state.Find(id) is { Standing: not PacketStanding.Void } packet ? packet : throw Misfit($"packet {id.Value} is not there.");

    public GrowOut GrowOut(GrowOutId id) => state.Find(id) is { IsVoid: false } growOut ? growOut : throw Misfit($"grow-out {id.Value} is not there.");

    public Loan Loan(LoanId id) => state.Find(id) is { IsVoid: false } loan ? loan : throw Misfit($"loan {id.Value} is not there.");

    /// <summary>Takes seed out of a node; a packet that is emptied gets the standing given.</summary>
    public void Take(NodeId node, Quantity seed, PacketStanding emptied = PacketStanding.Used) =>
        Change(node, stock => stock.Less(seed) ?? throw Misfit($"node {node.Value} holds {stock}, and {seed} is taken."), emptied);

    /// <summary>Puts seed into a node.</summary>
    public void Give(NodeId node, Quantity seed) => Change(node, stock => stock.Plus(seed), null);

    public void Move(NodeId node, string? place)
    {
        if (state.Find(new LotId(node.Value)) is { IsVoid: false } lot) state.Put(lot with { Place = place });
        else if (state.Find(new PacketId(node.Value)) is { Standing: not PacketStanding.Void } packet) state.Put(packet with { Place = place });
        else throw Misfit($"node {node.Value} is no lot or packet.");
    }

    public void Change(NodeId node, Func<Quantity, Quantity> change, PacketStanding? emptied)
    {
        if (state.Find(new LotId(node.Value)) is { IsVoid: false } lot)
        {
            state.Put(lot with { Stock = change(lot.Stock) });
        }
        else if (state.Find(new AccessionId(node.Value)) is { IsVoid: false } accession)
        {
            state.Put(accession with { Stock = change(accession.Stock) });
        }
        else if (state.Find(new GrowOutId(node.Value)) is { IsVoid: false, Stock: { } harvest } growOut)
        {
            state.Put(growOut with { Stock = change(harvest) });
        }
        else if (state.Find(new PacketId(node.Value)) is { Standing: not PacketStanding.Void } packet)
        {
            var stock = change(packet.Stock);
            state.Put(packet with { Stock = stock, Standing = stock.IsEmpty && emptied is { } standing ? standing : packet.Standing });
        }
        else
        {
            throw Misfit($"node {node.Value} holds no seed.");
        }
    }

    private void Accession(Accessioned act)
    {
        Unused(state.Find(act.Accession)?.IsVoid, act.Accession.Value);
        state.Put(new Accession(act.Accession, act.Code, act.Donor, null, act.ReceivedOn, act.Species, act.DeclaredName, act.Source, act.HarvestYear, act.Received, act.Received, act.ThousandSeedMilligrams));
    }

    private void Accession(TransferredIn act)
    {
        Unused(state.Find(act.Accession)?.IsVoid, act.Accession.Value);
        state.Put(new Accession(act.Accession, act.Code, null, act.Library, act.ReceivedOn, act.Species, act.DeclaredName, SeedSource.Library, null, act.Received, act.Received, act.ThousandSeedMilligrams));
    }

    private void Make(LotMade act)
    {
        Unused(state.Find(act.Lot)?.IsVoid, act.Lot.Value);
        if (act.Sources.Count == 0) throw Misfit("a lot needs a source.");
        var made = new Quantity(0, act.Unit);
        var all = act.Sources.Sum(source => source.SeedCount);
        foreach (var source in act.Sources)
        {
            Take(source.From, source.Taken);
            if (source.Given.Unit != act.Unit) throw Misfit("a source gave another unit than the lot's.");
            made = made.Plus(source.Given);
            Join(source.From, act.Lot.Node, all > 0 ? (double)source.SeedCount / all : 1.0 / act.Sources.Count, source.SeedCount);
        }

        state.Put(new Lot(act.Lot, act.Code, act.Origin, act.Species, act.MadeOn, made, made, act.ThousandSeedMilligrams, act.Place));
    }

    private void Packet(Packeted act)
    {
        var lot = Lot(act.Lot);
        foreach (var put in act.Packets)
        {
            Unused(state.Find(put.Packet) is { } known ? known.Standing == PacketStanding.Void : null, put.Packet.Value);
            Take(lot.Id.Node, put.Holds);
            state.Put(new Packet(put.Packet, put.Code, lot.Id, sequence, act.PackedOn, put.Holds, put.Holds, PacketStanding.OnShelf, null, null, null, act.Place));
            Join(lot.Id.Node, put.Packet.Node, 1, put.Holds.In(SeedUnit.Seeds, lot.ThousandSeedMilligrams)?.Amount ?? put.Holds.Amount);
        }
    }

    private void Pick(Picked act)
    {
        var packet = Packet(act.Packet);
        var request = state.Find(act.Request) ?? throw Misfit($"request {act.Request.Value} is not there.");
        if (packet.Standing != PacketStanding.OnShelf) throw Misfit($"packet {packet.Code} is not on the shelf.");
        state.Put(packet with { Standing = PacketStanding.Picked, Request = request.Id });
        state.Put(request with { Picked = packet.Id });
    }

    private void Lend(Lent act)
    {
        var packet = Packet(act.Packet);
        if (packet.Standing is not (PacketStanding.OnShelf or PacketStanding.Picked)) throw Misfit($"packet {packet.Code} is not on the shelf.");
        if (packet.Request is { } kept && kept != act.Request) throw Misfit($"packet {packet.Code} is kept for another request.");
        state.Put(packet with { Standing = PacketStanding.Lent, Holder = act.Borrower, Loan = act.Loan, Request = null });
        state.Put(new Loan(act.Loan, act.Packet, act.Borrower, act.LentOn, act.DueOn, null, null));
        if (act.Request is { } answered && state.Find(answered) is { } request) state.Put(request with { Picked = packet.Id, Loan = act.Loan });
    }

    private void End(LoanEnded act)
    {
        var loan = Loan(act.Loan);
        if (!loan.IsOpen) throw Misfit($"loan {act.Loan.Value} has ended already.");
        var packet = Packet(loan.Packet);
        state.Put(loan with { Ending = act.Ending, EndedOn = act.EndedOn });
        if (act.Ending == LoanEnding.BroughtBack)
        {
            if (packet.Stock.IsEmpty) throw Misfit($"packet {packet.Code} is empty and cannot go back on the shelf.");
            state.Put(packet with { Standing = PacketStanding.OnShelf, Holder = null, Loan = null });
        }
        else
        {
            if (act.Used != packet.Stock) throw Misfit($"packet {packet.Code} holds {packet.Stock}, and {act.Used} is counted as used.");
            state.Put(packet with { Standing = PacketStanding.Used, Stock = new Quantity(0, packet.Stock.Unit) });
        }
    }

    private void Grow(GrownOut act)
    {
        Unused(state.Find(act.GrowOut)?.IsVoid, act.GrowOut.Value);
        if (state.Find(new PacketId(act.From.Value)) is { } packet && packet.Stock != act.Sown) throw Misfit($"packet {packet.Code} holds {packet.Stock}, and {act.Sown} is sown.");
        TakeToSow(act);
        Join(act.From, act.GrowOut.Node, 1, act.Sown.Amount);
        state.Put(new GrowOut(act.GrowOut, act.From, act.Loan, act.Grower, act.SownOn, act.Sown, act.Facts, null, null, null));
    }

    // A lent packet stays with its borrower when it is sown: the loan is what ends it.
    private void TakeToSow(GrownOut act)
    {
        var isLent = state.Find(new PacketId(act.From.Value))?.Standing == PacketStanding.Lent;
        Take(act.From, act.Sown, isLent ? PacketStanding.Lent : PacketStanding.Used);
    }

    private void Return(Returned act)
    {
        var growOut = GrowOut(act.GrowOut);
        state.Put(growOut with
        {
            Harvest = growOut.Harvest?.Plus(act.Seed) ?? act.Seed,
            Stock = growOut.Stock?.Plus(act.Seed) ?? act.Seed,
            ThousandSeedMilligrams = act.ThousandSeedMilligrams ?? growOut.ThousandSeedMilligrams,
        });
        if (act.Loan is not { } ended || Loan(ended) is not { IsOpen: true } loan) return;
        if (loan.Packet.Node != growOut.From) throw Misfit("the grow-out was not sown from the packet of that loan.");
        // The sowing emptied the packet. What a stocktake found in it since is not used up by the harvest's coming home.
        state.Put(loan with { Ending = LoanEnding.ReturnedSeed, EndedOn = act.ReturnedOn });
        state.Put(Packet(loan.Packet) with { Standing = PacketStanding.Used });
    }

    private void Test(GerminationTested act)
    {
        if (!act.Used.IsEmpty) Take(act.Lot.Node, act.Used);
        state.Put(new GerminationTest(act.Test, Lot(act.Lot).Id, act.ReadOn, act.Replicates, act.Days));
    }

    private void Release(Released act)
    {
        var hold = state.Find(act.Hold) ?? throw Misfit($"hold {act.Hold.Value} is not there.");
        if (!hold.Stands) throw Misfit($"hold {act.Hold.Value} does not stand.");
        state.Put(hold with { ReleasedOn = act.ReleasedOn, ReleasedWhy = act.Why });
    }

    private void Count(Counted act)
    {
        Change(act.Node, stock => stock == act.Expected ? act.Found : throw Misfit($"node {act.Node.Value} holds {stock}, and the count expected {act.Expected}."), PacketStanding.Used);
        if (act.ThousandSeedMilligrams is null) return;
        if (state.Find(new LotId(act.Node.Value)) is { } lot) state.Put(lot with { ThousandSeedMilligrams = act.ThousandSeedMilligrams });
        else if (state.Find(new AccessionId(act.Node.Value)) is { } accession) state.Put(accession with { ThousandSeedMilligrams = act.ThousandSeedMilligrams });
        else if (state.Find(new GrowOutId(act.Node.Value)) is { } growOut) state.Put(growOut with { ThousandSeedMilligrams = act.ThousandSeedMilligrams });
    }

    private void SendAway(TransferredOut act)
    {
        Take(act.Node, act.Seed, PacketStanding.Transferred);
        state.Put(new SeedTransfer(sequence, act.Node, act.Seed, act.Library, act.SentOn));
    }

    private void Join(NodeId parent, NodeId child, double share, long seedCount)
    {
        // Numbers rise, so an edge that runs upwards in number can never close a circle.
        if (parent.Value >= child.Value) throw Misfit($"node {parent.Value} is not older than node {child.Value}.");
        state.Put(new LineageEdge(parent, child, share, seedCount));
    }

    private void Unused(bool? isVoid, long id)
    {
        if (isVoid == false) throw Misfit($"number {id} is taken.");
    }
}
