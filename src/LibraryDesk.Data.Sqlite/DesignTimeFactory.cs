using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace LibraryDesk.Data.Sqlite;

/// <summary>Lets <c>dotnet ef</c> build the model without a server.</summary>
internal sealed class DesignTimeFactory : IDesignTimeDbContextFactory<LibraryDbContext>
{
    public LibraryDbContext CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<LibraryDbContext>();
        new SqliteProvider().Configure(options, "Data Source=design-time.db");
        IdentitySchema.Apply(options);
        return new LibraryDbContext(options.Options);
    }
}
