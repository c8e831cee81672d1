using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>Undoes one earlier act, and says it again rightly where the correction does. What was undone stays, marked as void.</summary>
internal sealed class SeedUndo(SeedState state, SeedReplay replay, long sequence)
{
    public void Correct(Corrected act)
    {
        if (act.Instead is { } instead && Restate(act.Was.Act, instead.Act)) return;
        Undo(act.Entry, act.Was.Act);
        if (act.Instead is not null) replay.Apply(act.Instead.Act);
    }

    // Facts that nothing is reckoned from can be said again even when seed has gone on from there.
    private bool Restate(SeedAct was, SeedAct instead)
    {
        switch (was, instead)
        {
            case (Accessioned before, Accessioned after) when before.Accession == after.Accession && before.Received == after.Received:
                var accession = state.Find(after.Accession) ?? throw Missing(after.Accession.Value);
                state.Put(accession with
                {
                    Code = after.Code,
                    Donor = after.Donor,
                    ReceivedOn = after.ReceivedOn,
                    Species = after.Species,
                    DeclaredName = after.DeclaredName,
                    Source = after.Source,
                    HarvestYear = after.HarvestYear,
                    ThousandSeedMilligrams = after.ThousandSeedMilligrams,
                });
                return true;
            case (LotMade before, LotMade after) when before.Lot == after.Lot && before.Unit == after.Unit && before.Sources.SequenceEqual(after.Sources):
                var lot = state.Find(after.Lot) ?? throw Missing(after.Lot.Value);
                state.Put(lot with { Code = after.Code, Species = after.Species, MadeOn = after.MadeOn, ThousandSeedMilligrams = after.ThousandSeedMilligrams });
                return true;
            case (GrownOut before, GrownOut after) when before.GrowOut == after.GrowOut && before.From == after.From && before.Sown == after.Sown:
                var growOut = replay.GrowOut(after.GrowOut);
                state.Put(growOut with { Loan = after.Loan, Grower = after.Grower, SownOn = after.SownOn, Facts = after.Facts });
                return true;
            default:
                return false;
        }
    }

    private void Undo(long entry, SeedAct was)
    {
        switch (was)
        {
            case Accessioned act: Undo(act.Accession, act.Received); break;
            case TransferredIn act: Undo(act.Accession, act.Received); break;
            case LotMade act: Undo(act); break;
            case Packeted act: Undo(act); break;
            case Requested act: state.Put((state.Find(act.Request) ?? throw Missing(act.Request.Value)) with { IsVoid = true }); break;
            case Picked act: Undo(act); break;
            case Lent act: Undo(act); break;
            case LoanEnded act: Undo(act); break;
            case GrownOut act: Undo(act); break;
            case Returned act: Undo(act); break;
            case GerminationTested act: Undo(act); break;
            case Named act: state.Put((state.Find(act.Claim) ?? throw Missing(act.Claim.Value)) with { IsWithdrawn = true }); break;
            case Held act: Undo(act.Hold); break;
            case Recalled act: Undo(act.Hold); break;
            case Released act: Undo(act); break;
            case Moved act: replay.Move(act.Node, act.From); break;
            case Counted act: Undo(act); break;
            case Discarded act: PutBack(act.Node, act.Seed); break;
            case TransferredOut act: Undo(entry, act); break;
            default: throw replay.Misfit($"{was.Kind} cannot be undone.");
        }
    }

    private void Undo(AccessionId id, Quantity received)
    {
        var accession = state.Find(id) ?? throw Missing(id.Value);
        if (accession.Stock != received) throw replay.Misfit("seed of the accession has gone on already.");
        state.Put(accession with { Stock = new Quantity(0, received.Unit), IsVoid = true });
    }

    private void Undo(LotMade act)
    {
        var lot = replay.Lot(act.Lot);
        if (lot.Stock != lot.Made) throw replay.Misfit("seed of the lot has gone on already.");
        foreach (var source in act.Sources) replay.Give(source.From, source.Taken);
        state.Put(lot with { Stock = new Quantity(0, act.Unit), IsVoid = true });
    }

    private void Undo(Packeted act)
    {
        foreach (var put in act.Packets)
        {
            var packet = replay.Packet(put.Packet);
            if (packet.Standing != PacketStanding.OnShelf || packet.Stock != put.Holds) throw replay.Misfit($"packet {packet.Code} has gone on already.");
            replay.Give(act.Lot.Node, put.Holds);
            state.Put(packet with { Standing = PacketStanding.Void, Stock = new Quantity(0, put.Holds.Unit) });
        }
    }

    private void Undo(Picked act)
    {
        var packet = replay.Packet(act.Packet);
        if (packet.Standing != PacketStanding.Picked) throw replay.Misfit("the packet was handed over already.");
        state.Put(packet with { Standing = PacketStanding.OnShelf, Request = null });
        if (state.Find(act.Request) is { } request) state.Put(request with { Picked = null });
    }

    private void Undo(Lent act)
    {
        var loan = replay.Loan(act.Loan);
        var packet = replay.Packet(act.Packet);
        if (!loan.IsOpen || packet.Stock.IsEmpty) throw replay.Misfit("the loan has gone on already.");
        state.Put(loan with { IsVoid = true });
        state.Put(packet with
        {
            Standing = act.Request is null ? PacketStanding.OnShelf : PacketStanding.Picked,
            Holder = null,
            Loan = null,
            Request = act.Request,
        });
        if (act.Request is { } answered && state.Find(answered) is { } request) state.Put(request with { Loan = null });
    }

    private void Undo(LoanEnded act)
    {
        var loan = replay.Loan(act.Loan);
        var packet = replay.Packet(loan.Packet);
        var isBack = act.Ending == LoanEnding.BroughtBack;
        if (loan.Ending != act.Ending || (isBack && packet.Standing != PacketStanding.OnShelf)) throw replay.Misfit("the packet has gone on already.");
        state.Put(loan with { Ending = null, EndedOn = null });
        state.Put(packet with { Standing = PacketStanding.Lent, Holder = loan.Borrower, Loan = loan.Id, Stock = packet.Stock.Plus(act.Used) });
    }

    private void Undo(GrownOut act)
    {
        var growOut = replay.GrowOut(act.GrowOut);
        if (growOut.Harvest is not null) throw replay.Misfit("seed of the grow-out came back already.");
        state.Put(growOut with { IsVoid = true });
        if (state.Find(new PacketId(act.From.Value)) is { } packet)
        {
            if (packet.Loan is { } id && state.Find(id) is { IsOpen: false }) throw replay.Misfit("the loan it grew from has ended; undo that first.");
            // Added, not put in place of what is there: a stocktake may have found seed in the packet since.
            state.Put(packet with { Stock = packet.Stock.Plus(growOut.Sown), Standing = packet.Standing == PacketStanding.Used ? PacketStanding.OnShelf : packet.Standing });
        }
        else
        {
            replay.Give(act.From, growOut.Sown);
        }
    }

    private void Undo(Returned act)
    {
        var growOut = replay.GrowOut(act.GrowOut);
        var stock = growOut.Stock?.Less(act.Seed) ?? throw replay.Misfit("seed of the return has gone into a lot already.");
        var harvest = growOut.Harvest!.Value.Less(act.Seed)!.Value;
        state.Put(growOut with { Harvest = harvest.IsEmpty ? null : harvest, Stock = harvest.IsEmpty ? null : stock });
        if (act.Loan is { } ended && replay.Loan(ended) is { Ending: LoanEnding.ReturnedSeed } loan)
        {
            state.Put(loan with { Ending = null, EndedOn = null });
            var packet = replay.Packet(loan.Packet);
            state.Put(packet with { Standing = PacketStanding.Lent });
        }
    }

    private void Undo(GerminationTested act)
    {
        if (!act.Used.IsEmpty) replay.Give(act.Lot.Node, act.Used);
        state.Put((state.Find(act.Test) ?? throw Missing(act.Test.Value)) with { IsVoid = true });
    }

    private void Undo(HoldId id) => state.Put((state.Find(id) ?? throw Missing(id.Value)) with { IsVoid = true });

    private void Undo(Released act)
    {
        var hold = state.Find(act.Hold) ?? throw Missing(act.Hold.Value);
        if (hold.IsVoid) throw replay.Misfit("the hold itself was undone.");
        state.Put(hold with { ReleasedOn = null, ReleasedWhy = null });
    }

    private void Undo(Counted act)
    {
        if (act.Found.Amount >= act.Expected.Amount) replay.Take(act.Node, new Quantity(act.Found.Amount - act.Expected.Amount, act.Found.Unit));
        else PutBack(act.Node, new Quantity(act.Expected.Amount - act.Found.Amount, act.Found.Unit));
    }

    private void Undo(long entry, TransferredOut act)
    {
        PutBack(act.Node, act.Seed);
        state.Put((state.FindTransfer(entry) ?? throw Missing(entry)) with { IsVoid = true });
    }

    // A packet that was thrown away, sent away or counted down to nothing comes back onto the shelf, or to its borrower.
    private void PutBack(NodeId node, Quantity seed)
    {
        replay.Give(node, seed);
        if (state.Find(new PacketId(node.Value)) is not { } packet) return;
        var isOut = packet.Loan is { } id && state.Find(id) is { IsOpen: true };
        state.Put(packet with { Standing = isOut ? PacketStanding.Lent : packet.Request is null ? PacketStanding.OnShelf : PacketStanding.Picked });
    }

    private LedgerMisfitException Missing(long id) => new(sequence, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"number {id} is not there."));
}
