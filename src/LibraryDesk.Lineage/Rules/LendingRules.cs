using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides which packets may leave, and how loans end.</summary>
public static class LendingRules
{
    public const string AlreadyOutCode = "lending.already-out";
    public const string GoneCode = "lending.gone";
    public const string KeptForAnotherCode = "lending.kept-for-another";
    public const string NoneOnShelfCode = "lending.none-on-shelf";
    public const string OtherLotCode = "lending.other-lot";
    public const string RequestDoneCode = "lending.request-done";
    public const string DueBeforeLentCode = "lending.due-before-lent";
    public const string LoanEndedCode = "lending.loan-ended";
    public const string SownAlreadyCode = "lending.sown-already";

    /// <summary>Notes that a member asks for a packet of a lot.</summary>
    /// <param name="request">The new request's number.</param>
    /// <param name="lot">The lot.</param>
    /// <param name="onShelf">How many of its packets are free on the shelf.</param>
    /// <param name="holdsAbove">Holds on the lot and everything upstream.</param>
    /// <param name="by">Who asks.</param>
    public static Outcome<Requested> Request(RequestId request, Lot lot, int onShelf, IReadOnlyList<Hold> holdsAbove, PersonId by)
    {
        ArgumentNullException.ThrowIfNull(lot);
        if (lot.IsVoid) return SeedRefusals.NoLot;
        if (Checks.Standing(holdsAbove) is { } hold) return SeedRefusals.OnHold(hold);
        if (onShelf < 1) return new Refusal(NoneOnShelfCode, "No packet of this lot is on the shelf. Ask a librarian whether more can be put up.");
        return new Requested(request, lot.Id, by);
    }

    /// <summary>Takes a packet off the shelf for a request.</summary>
    public static Outcome<Picked> Pick(SeedRequest request, Packet packet, IReadOnlyList<Hold> holdsAbove)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(packet);
        if (request.IsVoid || request.Loan is not null || request.Picked is not null) return new Refusal(RequestDoneCode, "This request has been answered already.");
        if (packet.Lot != request.Lot) return new Refusal(OtherLotCode, "This packet is of another lot than the one asked for. Take one with the right lot code.");
        if (NotFree(packet, null) is { } no) return no;
        if (Checks.Standing(holdsAbove) is { } hold) return SeedRefusals.OnHold(hold);
        return new Picked(request.Id, packet.Id);
    }

    /// <summary>Decides whether one packet may leave. A hold on the packet, or on any lot or accession above it, stops it.</summary>
    /// <param name="loan">The new loan's number.</param>
    /// <param name="packet">The packet as it stands.</param>
    /// <param name="holdsAbove">Holds on it and everything upstream.</param>
    /// <param name="request">The request it answers; null when taken from the shelf.</param>
    /// <param name="borrower">Who takes it.</param>
    /// <param name="lentOn">The day.</param>
    /// <param name="dueOn">When seed is hoped for; null when none is asked back.</param>
    /// <param name="today">Today.</param>
    public static Outcome<Lent> Lend(LoanId loan, Packet packet, IReadOnlyList<Hold> holdsAbove, SeedRequest? request, PersonId borrower, DateOnly lentOn, DateOnly? dueOn, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(packet);
        if (Checks.Days(lentOn, today, packet.PackedOn) is { } wrongDay) return wrongDay;
        if (dueOn < lentOn) return new Refusal(DueBeforeLentCode, "Seed cannot be due before the packet is lent. Give a later day, or none.");
        if (request is not null && (request.IsVoid || request.Loan is not null)) return new Refusal(RequestDoneCode, "This request has been answered already.");
        if (request is not null && request.Lot != packet.Lot) return new Refusal(OtherLotCode, "This packet is of another lot than the one asked for. Take one with the right lot code.");
        if (NotFree(packet, request?.Id) is { } no) return no;
        if (Checks.Standing(holdsAbove) is { } hold) return SeedRefusals.OnHold(hold);
        return new Lent(loan, packet.Id, borrower, lentOn, dueOn, request?.Id);
    }

    /// <summary>Ends a loan that brings no new seed home, or one whose seed came back.</summary>
    public static Outcome<LoanEnded> End(Loan loan, Packet packet, LoanEnding ending, DateOnly endedOn, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(loan);
        ArgumentNullException.ThrowIfNull(packet);
        if (!loan.IsOpen) return new Refusal(LoanEndedCode, "This loan has ended already. If it ended otherwise, correct that entry.");
        if (Checks.Days(endedOn, today, loan.LentOn) is { } wrongDay) return wrongDay;
        var isBack = ending == LoanEnding.BroughtBack;
        if (isBack && packet.Stock.IsEmpty) return new Refusal(SownAlreadyCode, "This packet was sown, so it cannot go back on the shelf. Say how the growing went instead.");
        return new LoanEnded(loan.Id, packet.Id, ending, endedOn, isBack ? new Quantity(0, packet.Stock.Unit) : packet.Stock);
    }

    private static Refusal? NotFree(Packet packet, RequestId? forRequest) => packet.Standing switch
    {
        PacketStanding.OnShelf => null,
        PacketStanding.Picked when packet.Request == forRequest && forRequest is not null => null,
        PacketStanding.Picked => new(KeptForAnotherCode, $"Packet {packet.Code} is kept for another member's request. Take another packet of the lot."),
        PacketStanding.Lent => new(AlreadyOutCode, $"Packet {packet.Code} is out on loan already. Take another packet of the lot."),
        PacketStanding.Void => SeedRefusals.NoPacket,
        _ => new(GoneCode, $"Packet {packet.Code} is gone: it was used, thrown away or sent on. Take another packet of the lot."),
    };
}
