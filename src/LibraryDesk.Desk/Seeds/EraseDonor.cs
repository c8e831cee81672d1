using LibraryDesk.Data.Provider;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Search;

namespace LibraryDesk.Desk.Seeds;

/// <summary>Erases the name and the address of a donor who wants that. The ledger knows the donor by a bare number, so the chain stays whole and still verifies.</summary>
public sealed class EraseDonor(IDbContextFactory<LibraryDbContext> factory, IDatabaseProvider provider, TimeProvider clock)
{
    public const string GoneCode = "donor.gone";

    public async Task<Outcome<DonorRow>> RunAsync(Actor actor, Guid donorId, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (!actor.IsLibrarian) return PeopleRefusals.LibrariansOnly;
        await using var db = await factory.CreateDbContextAsync(stop);
        return await db.Database.CreateExecutionStrategy().ExecuteAsync<Outcome<DonorRow>>(async () =>
        {
            db.ChangeTracker.Clear();
            await using var transaction = await db.Database.BeginTransactionAsync(stop);
            await provider.LockLedgerAsync(db, stop);
            var donor = await db.Set<DonorRow>().SingleOrDefaultAsync(row => row.Id == donorId, stop);
            if (donor is null or { ErasedAt: not null }) return Gone;
            (donor.Name, donor.Contact, donor.Note, donor.ErasedAt) = ("", null, null, clock.GetUtcNow());
            await db.SaveChangesAsync(stop);
            await new SearchIndex(db, stop).ForgetDonorAsync(donorId);
            await transaction.CommitAsync(stop);
            return donor;
        });
    }

    private static Refusal Gone { get; } = new(GoneCode, "This donor is not on record, or was erased already. Somebody with a sign-in is erased on the people page.");
}
