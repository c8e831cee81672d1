using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Seed that somebody brings.</summary>
/// <param name="Donor">Who gives it; null when nobody knows.</param>
/// <param name="Source">How it came.</param>
/// <param name="Species">Candidate id of a crop guide; null when not known.</param>
/// <param name="DeclaredName">The variety name it comes under; null without one.</param>
/// <param name="Received">How much.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="HarvestYear">The year it ripened; null when not known.</param>
/// <param name="ReceivedOn">The day; null for today.</param>
/// <param name="Place">Where it is put; null when not said.</param>
/// <param name="MakesLot">True to make a lot of all of it in the same go.</param>
public sealed record SeedOffer(
    DonorEntry? Donor,
    SeedSource Source,
    string? Species,
    string? DeclaredName,
    Quantity Received,
    long? ThousandSeedMilligrams = null,
    int? HarvestYear = null,
    DateOnly? ReceivedOn = null,
    string? Place = null,
    bool MakesLot = true);

/// <summary>A donor: one the library knows by id, or a new one by name. The ledger keeps the id alone.</summary>
/// <param name="Id">Of a person or a donor on record; null for a new donor.</param>
/// <param name="Name">Of a new donor.</param>
/// <param name="Contact">How to reach a new donor; null when not told.</param>
public sealed record DonorEntry(Guid? Id, string? Name = null, string? Contact = null);

/// <summary>The accession, and the lot that was made of it; null when none was.</summary>
public sealed record AccessionReceived(AccessionCode Accession, LotCode? Lot);

/// <summary>Takes seed in from a donor: the accession, the donor's name for it as a claim, a lot of all of it, and the intake hold where the library wants one.</summary>
public sealed class ReceiveAccession(SeedLedger ledger)
{
    public const string DonorNameCode = "receiving.donor-name";
    public const string DonorContactCode = "receiving.donor-contact";

    public Task<Outcome<AccessionReceived>> RunAsync(Actor actor, SeedOffer offer, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => ReceiveAsync(work, offer), stop)
            : Task.FromResult<Outcome<AccessionReceived>>(PeopleRefusals.LibrariansOnly);

    private static async Task<Outcome<AccessionReceived>> ReceiveAsync(SeedWork work, SeedOffer offer)
    {
        var on = offer.ReceivedOn ?? work.Today;
        var settings = await work.SettingsAsync();
        var accession = work.Ids.Next<AccessionId>();
        var code = await work.NextAccessionCodeAsync(work.CodeYear(on));
        if (!Donor(work, offer.Donor).TryGet(out var donor, out var noDonor)) return noDonor;

        var received = ReceivingRules.Receive(
            new(accession, code, donor.Id, on, Blank(offer.Species), Blank(offer.DeclaredName), offer.Received, offer.ThousandSeedMilligrams, offer.Source, offer.HarvestYear),
            work.Today);
        if (!received.TryGet(out var accessioned, out var no)) return no;
        work.Append(accessioned);

        if (accessioned.DeclaredName is not null || accessioned.Species is not null)
        {
            var grounds = donor.Id is null ? ClaimGrounds.LabelOnly : ClaimGrounds.DonorsWord;
            var claim = new Named(work.Ids.Next<ClaimId>(), accession.Node, accessioned.Species, accessioned.DeclaredName, grounds, donor.Id, on, null);
            if (!NamingRules.Claim(claim, on, new HashSet<NodeId>(), work.Today).TryGet(out var named, out var noClaim)) return noClaim;
            work.Append(named);
        }

        if (!offer.MakesLot) return new AccessionReceived(code, null);
        var lot = await work.NewLotAsync(on, offer.Place);
        var taking = new LotTaking(SeedStock.Of(work.State.Find(accession)!), accessioned.Species, null, []);
        if (!LotRules.FromAccession(lot, taking, work.Today).TryGet(out var made, out var noLot)) return noLot;
        work.Append(made);
        if (settings.IntakeHoldDays > 0) work.Append(new Held(work.Ids.Next<HoldId>(), lot.Lot.Node, HoldReason.IntakeQuarantine, on));
        return new AccessionReceived(code, lot.Code);
    }

    private static Outcome<DonorChosen> Donor(SeedWork work, DonorEntry? donor)
    {
        if (donor is null) return new DonorChosen(null);
        if (donor.Id is { } known) return new DonorChosen(new PersonId(known));
        if (Blank(donor.Name) is not { } name) return new Refusal(DonorNameCode, "Give the donor's name, or say that nobody knows who gave the seed.");
        if (name.Length > SeedText.Name) return new Refusal(DonorNameCode, $"Keep the donor's name under {SeedText.Name} characters.");
        if (Blank(donor.Contact)?.Length > SeedText.Contact) return new Refusal(DonorContactCode, $"Keep how to reach the donor under {SeedText.Contact} characters.");
        var row = new DonorRow { Id = Guid.NewGuid(), Name = name, Contact = Blank(donor.Contact) };
        work.Db.Add(row);
        return new DonorChosen(new PersonId(row.Id));
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private sealed record DonorChosen(PersonId? Id);
}
