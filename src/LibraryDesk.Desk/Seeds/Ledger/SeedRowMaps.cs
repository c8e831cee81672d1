using System.Globalization;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>Rows as the records that the lineage core decides on, and back. A row is always written whole.</summary>
internal static class SeedRowMaps
{
    public static Accession ToRecord(this AccessionRow row) => new(
        new(row.Id), Code<AccessionCode>(row.Code), Person(row.DonorId), row.Library, row.ReceivedOn, row.Species, row.DeclaredName, row.Source, row.HarvestYear,
        new(row.Received, row.Unit), new(row.Stock, row.Unit), row.ThousandSeedMilligrams, row.IsVoid);

    public static AccessionRow ToRow(this Accession accession) => new()
    {
        Id = accession.Id.Value,
        Code = accession.Code.ToString(),
        DonorId = accession.Donor?.Value,
        Library = accession.Library,
        ReceivedOn = accession.ReceivedOn,
        Species = accession.Species,
        DeclaredName = accession.DeclaredName,
        Source = accession.Source,
        HarvestYear = accession.HarvestYear,
        Unit = accession.Received.Unit,
        Received = accession.Received.Amount,
        Stock = accession.Stock.Amount,
        ThousandSeedMilligrams = accession.ThousandSeedMilligrams,
        IsVoid = accession.IsVoid,
    };

    public static Lot ToRecord(this LotRow row) => new(
        new(row.Id), Code<LotCode>(row.Code), row.Origin, row.Species, row.MadeOn, new(row.Made, row.Unit), new(row.Stock, row.Unit),
        row.ThousandSeedMilligrams, row.Place, row.IsVoid);

    public static LotRow ToRow(this Lot lot) => new()
    {
        Id = lot.Id.Value,
        Code = lot.Code.ToString(),
        Origin = lot.Origin,
        Species = lot.Species,
        MadeOn = lot.MadeOn,
        Unit = lot.Made.Unit,
        Made = lot.Made.Amount,
        Stock = lot.Stock.Amount,
        ThousandSeedMilligrams = lot.ThousandSeedMilligrams,
        Place = lot.Place,
        IsVoid = lot.IsVoid,
    };

    public static LineageEdge ToRecord(this LineageEdgeRow row) => new(new(row.ParentId), new(row.ChildId), row.Share, row.SeedCount);

    public static LineageEdgeRow ToRow(this LineageEdge edge) => new()
    {
        ParentId = edge.Parent.Value,
        ChildId = edge.Child.Value,
        Share = edge.Share,
        SeedCount = edge.SeedCount,
    };

    public static Packet ToRecord(this PacketRow row) => new(
        new(row.Id), Code<PacketCode>(row.Code), new(row.LotId), row.Packing, row.PackedOn, new(row.Held, row.Unit), new(row.Stock, row.Unit), row.Standing,
        Person(row.HolderId), row.LoanId is { } loan ? new LoanId(loan) : null, row.RequestId is { } request ? new RequestId(request) : null, row.Place);

    public static PacketRow ToRow(this Packet packet) => new()
    {
        Id = packet.Id.Value,
        Code = packet.Code.ToString(),
        LotId = packet.Lot.Value,
        Packing = packet.Packing,
        PackedOn = packet.PackedOn,
        Unit = packet.Held.Unit,
        Held = packet.Held.Amount,
        Stock = packet.Stock.Amount,
        Standing = packet.Standing,
        HolderId = packet.Holder?.Value,
        LoanId = packet.Loan?.Value,
        RequestId = packet.Request?.Value,
        Place = packet.Place,
    };

    public static Loan ToRecord(this LoanRow row) => new(
        new(row.Id), new(row.PacketId), new(row.BorrowerId), row.LentOn, row.DueOn, row.Ending, row.EndedOn, row.IsVoid);

    public static LoanRow ToRow(this Loan loan) => new()
    {
        Id = loan.Id.Value,
        PacketId = loan.Packet.Value,
        BorrowerId = loan.Borrower.Value,
        LentOn = loan.LentOn,
        DueOn = loan.DueOn,
        Ending = loan.Ending,
        EndedOn = loan.EndedOn,
        IsVoid = loan.IsVoid,
    };

    public static SeedRequest ToRecord(this SeedRequestRow row) => new(
        new(row.Id), new(row.LotId), new(row.ById), row.PickedPacketId is { } packet ? new PacketId(packet) : null,
        row.LoanId is { } loan ? new LoanId(loan) : null, row.IsVoid);

    public static SeedRequestRow ToRow(this SeedRequest request) => new()
    {
        Id = request.Id.Value,
        LotId = request.Lot.Value,
        ById = request.By.Value,
        PickedPacketId = request.Picked?.Value,
        LoanId = request.Loan?.Value,
        IsVoid = request.IsVoid,
    };

    public static GrowOut ToRecord(this GrowOutRow row) => new(
        new(row.Id), new(row.FromId), row.LoanId is { } loan ? new LoanId(loan) : null, Person(row.GrowerId), row.SownOn, new(row.Sown, row.SownUnit),
        new(row.PlantsGrown, row.PlantsSavedFrom, row.OffTypesSeen, row.OffTypesRemoved, row.Isolation, row.NearestMetres, row.OthersInFlower, row.Manner, row.HarvestedOn, row.SownLater),
        Amount(row.Harvest, row.HarvestUnit), Amount(row.Stock, row.HarvestUnit), row.ThousandSeedMilligrams, row.IsVoid);

    public static GrowOutRow ToRow(this GrowOut growOut) => new()
    {
        Id = growOut.Id.Value,
        FromId = growOut.From.Value,
        LoanId = growOut.Loan?.Value,
        GrowerId = growOut.Grower?.Value,
        SownOn = growOut.SownOn,
        Sown = growOut.Sown.Amount,
        SownUnit = growOut.Sown.Unit,
        PlantsGrown = growOut.Facts.PlantsGrown,
        PlantsSavedFrom = growOut.Facts.PlantsSavedFrom,
        OffTypesSeen = growOut.Facts.OffTypesSeen,
        OffTypesRemoved = growOut.Facts.OffTypesRemoved,
        Isolation = growOut.Facts.Isolation,
        NearestMetres = growOut.Facts.NearestMetres,
        OthersInFlower = growOut.Facts.OthersInFlower,
        HarvestedOn = growOut.Facts.HarvestedOn,
        SownLater = growOut.Facts.SownLater,
        Manner = growOut.Facts.Harvest,
        HarvestUnit = growOut.Harvest?.Unit,
        Harvest = growOut.Harvest?.Amount,
        Stock = growOut.Stock?.Amount,
        ThousandSeedMilligrams = growOut.ThousandSeedMilligrams,
        IsVoid = growOut.IsVoid,
    };

    public static Hold ToRecord(this HoldRow row) => new(new(row.Id), new(row.NodeId), row.Reason, row.HeldOn, row.ReleasedOn, row.ReleasedWhy, row.IsVoid);

    public static HoldRow ToRow(this Hold hold) => new()
    {
        Id = hold.Id.Value,
        NodeId = hold.Node.Value,
        Reason = hold.Reason,
        HeldOn = hold.HeldOn,
        ReleasedOn = hold.ReleasedOn,
        ReleasedWhy = hold.ReleasedWhy,
        IsVoid = hold.IsVoid,
    };

    public static NameClaim ToRecord(this NameClaimRow row) => new(
        new(row.Id), new(row.NodeId), row.Species, row.Variety, row.Grounds, Person(row.ById), row.ClaimedOn,
        row.CaseNumber is { } number
            ? new DeskEvidence(number, row.Link, row.OriginId is { } origin ? new NodeId(origin) : null, row.Fits == true, row.GuideVersion)
            : null,
        row.IsWithdrawn);

    public static NameClaimRow ToRow(this NameClaim claim) => new()
    {
        Id = claim.Id.Value,
        NodeId = claim.Node.Value,
        Species = claim.Species,
        Variety = claim.Variety,
        Grounds = claim.Grounds,
        ById = claim.By?.Value,
        ClaimedOn = claim.ClaimedOn,
        CaseNumber = claim.Evidence?.Case,
        Link = claim.Evidence?.Link,
        OriginId = claim.Evidence?.Origin?.Value,
        Fits = claim.Evidence?.Fits,
        GuideVersion = claim.Evidence?.GuideVersion,
        IsWithdrawn = claim.IsWithdrawn,
    };

    public static GerminationTest ToRecord(this GerminationTestRow row) =>
        new(new(row.Id), new(row.LotId), row.ReadOn, [.. row.Replicates.Split(' ').Select(Replicate)], row.Days, row.IsVoid);

    public static GerminationTestRow ToRow(this GerminationTest test) => new()
    {
        Id = test.Id.Value,
        LotId = test.Lot.Value,
        ReadOn = test.ReadOn,
        Replicates = string.Join(' ', test.Replicates.Select(replicate => string.Create(CultureInfo.InvariantCulture, $"{replicate.Germinated}/{replicate.Sown}"))),
        Sown = test.Sown,
        Germinated = test.Germinated,
        Days = test.Days,
        IsVoid = test.IsVoid,
    };

    public static SeedTransfer ToRecord(this SeedTransferRow row) =>
        new(row.Entry, new(row.NodeId), new(row.Amount, row.Unit), row.Library, row.SentOn, row.IsVoid);

    public static SeedTransferRow ToRow(this SeedTransfer transfer) => new()
    {
        Entry = transfer.Entry,
        NodeId = transfer.Node.Value,
        Unit = transfer.Seed.Unit,
        Amount = transfer.Seed.Amount,
        Library = transfer.Library,
        SentOn = transfer.SentOn,
        IsVoid = transfer.IsVoid,
    };

    private static PersonId? Person(Guid? id) => id is { } known ? new PersonId(known) : null;

    private static Quantity? Amount(long? amount, SeedUnit? unit) => amount is { } known && unit is { } counted ? new Quantity(known, counted) : null;

    private static TestReplicate Replicate(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return new(int.Parse(text.AsSpan(slash + 1), NumberStyles.None, CultureInfo.InvariantCulture), int.Parse(text.AsSpan(0, slash), NumberStyles.None, CultureInfo.InvariantCulture));
    }

    // A code in a table was printed by the code type, so one that does not read back is damage.
    private static T Code<T>(string text)
        where T : struct, ICode<T> =>
        T.Read(text).Match(code => code, refusal => throw new InvalidOperationException($"The code {text} in the tables cannot be read: {refusal.Message}"));
}
