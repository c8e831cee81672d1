using LibraryDesk.Data.Provider;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Data;

/// <summary>Puts the database into a service collection.</summary>
public static class LibraryDataRegistration
{
    /// <summary>
    /// Registers <see cref="IDbContextFactory{TContext}"/> of <see cref="LibraryDbContext"/> and the chosen <see cref="IDatabaseProvider"/>.
    /// Throws <see cref="InvalidOperationException"/> when the configured provider is none of <paramref name="providers"/>.
    /// </summary>
    public static IServiceCollection AddLibraryData(
        this IServiceCollection services, IConfiguration configuration, params IDatabaseProvider[] providers)
    {
        var options = configuration.GetSection(DatabaseOptions.Section).Get<DatabaseOptions>() ?? new DatabaseOptions();
        var provider = providers.FirstOrDefault(p => p.Name.Equals(options.Provider, StringComparison.OrdinalIgnoreCase))
            ?? throw new InvalidOperationException(
                $"Database:Provider is \"{options.Provider}\". Set it to one of: {string.Join(", ", providers.Select(p => p.Name))}.");
        services.AddSingleton(provider);
        services.Configure<IdentityOptions>(identity => identity.Stores.SchemaVersion = IdentitySchemaVersions.Version3);
        services.AddDbContextFactory<LibraryDbContext>(builder =>
        {
            provider.Configure(builder, options.ConnectionString);
            builder.AddInterceptors(new RevisionInterceptor());
        });
        return services;
    }
}
