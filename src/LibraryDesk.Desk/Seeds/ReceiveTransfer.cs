using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Seed that another library sends.</summary>
/// <param name="Library">The other library, as it calls itself.</param>
/// <param name="ForeignCode">The code on the seed as it came.</param>
/// <param name="ForeignHead">The head of the other library's chain as printed; null when it keeps none.</param>
/// <param name="Species">Candidate id of a crop guide; null when not known.</param>
/// <param name="DeclaredName">The variety name it came under; null without one.</param>
/// <param name="Received">How much.</param>
/// <param name="ThousandSeedMilligrams">Weight of 1000 seeds in milligrams; null when not known.</param>
/// <param name="ReceivedOn">The day; null for today.</param>
public sealed record TransferOffer(
    string? Library, string? ForeignCode, string? ForeignHead, string? Species, string? DeclaredName, Quantity Received, long? ThousandSeedMilligrams = null, DateOnly? ReceivedOn = null);

/// <summary>Takes seed in from another library, as an accession of its own with the label's name as a claim.</summary>
public sealed class ReceiveTransfer(SeedLedger ledger)
{
    public Task<Outcome<AccessionCode>> RunAsync(Actor actor, TransferOffer offer, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync<AccessionCode>(actor, async work =>
            {
                var on = offer.ReceivedOn ?? work.Today;
                var accession = work.Ids.Next<AccessionId>();
                var code = await work.NextAccessionCodeAsync(work.CodeYear(on));

                var decided = ReceivingRules.TransferIn(
                    new(accession, code, offer.Library ?? "", offer.ForeignCode ?? "", offer.ForeignHead, on, offer.Species, offer.DeclaredName, offer.Received, offer.ThousandSeedMilligrams), work.Today);
                if (!decided.TryGet(out var transferred, out var no)) return no;
                work.Append(transferred);

                if (offer.Species is null && offer.DeclaredName is null) return code;
                var claim = new Named(work.Ids.Next<ClaimId>(), accession.Node, offer.Species, offer.DeclaredName, ClaimGrounds.LabelOnly, null, on, null);
                if (!NamingRules.Claim(claim, on, new HashSet<NodeId>(), work.Today).TryGet(out var named, out var noName)) return noName;
                work.Append(named);
                return code;
            }, stop)
            : Task.FromResult<Outcome<AccessionCode>>(PeopleRefusals.LibrariansOnly);
}
