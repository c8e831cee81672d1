using LibraryDesk.Data.People;
using LibraryDesk.Data.Provider;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace LibraryDesk.Data;

/// <summary>All tables of one library: people, cases, the seed ledger and what is derived from it.</summary>
public sealed class LibraryDbContext(DbContextOptions<LibraryDbContext> options)
    : IdentityDbContext<DeskUser, IdentityRole<Guid>, Guid>(options), IDataProtectionKeyContext
{
    /// <summary>Keys that protect cookies and links; kept in the database so that several servers share them.</summary>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <inheritdoc />
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(LibraryDbContext).Assembly);
        builder.UseSnakeNames();
        if (Database.ProviderName?.EndsWith("Sqlite", StringComparison.Ordinal) == true)
            builder.StoreInstantsAsTicks();
        else
            builder.CompareWordsByLetter();
    }
}
