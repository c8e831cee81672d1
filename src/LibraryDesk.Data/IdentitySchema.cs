using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Data;

/// <summary>
/// Identity reads its schema version from its options, which a design-time factory does not have; without this the
/// migrations would lack the passkey table that the running server has.
/// </summary>
public static class IdentitySchema
{
    private static readonly IServiceProvider Options = new ServiceCollection()
        .Configure<IdentityOptions>(options => options.Stores.SchemaVersion = IdentitySchemaVersions.Version3)
        .BuildServiceProvider();

    /// <summary>Call once on every options builder made by hand.</summary>
    public static void Apply(DbContextOptionsBuilder builder) => builder.UseApplicationServiceProvider(Options);
}
