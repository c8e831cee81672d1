using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace LibraryDesk.Data.Postgres;

/// <summary>Lets <c>dotnet ef</c> build the model without a server.</summary>
internal sealed class DesignTimeFactory : IDesignTimeDbContextFactory<LibraryDbContext>
{
    public LibraryDbContext CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<LibraryDbContext>();
        new PostgresProvider().Configure(options, "Host=localhost;Database=design_time");
        IdentitySchema.Apply(options);
        return new LibraryDbContext(options.Options);
    }
}
