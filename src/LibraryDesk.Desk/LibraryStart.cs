using LibraryDesk.Data.Provider;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk;

/// <summary>What must be so before the first request or command: tables up to date, roles there, the clock by the library's time zone.</summary>
public static class LibraryStart
{
    public static async Task PrepareAsync(IServiceProvider services, CancellationToken stop)
    {
        var factory = services.GetRequiredService<IDbContextFactory<LibraryDbContext>>();
        var provider = services.GetRequiredService<IDatabaseProvider>();
        await using var db = await factory.CreateDbContextAsync(stop);
        await provider.MigrateAsync(db, stop);
        // From the first moment on, days are the library's.
        await services.GetRequiredService<LibrarySettings>().ReadAsync(stop);
        try
        {
            await AddRolesAsync(db, stop);
        }
        catch (DbUpdateException failure) when (provider.IsUniqueViolation(failure))
        {
            // Another server started at the same moment and added them first.
        }
    }

    private static async Task AddRolesAsync(LibraryDbContext db, CancellationToken stop)
    {
        var there = await db.Roles.Select(role => role.NormalizedName).ToListAsync(stop);
        foreach (var name in DeskRoles.All)
        {
            var normalized = name.ToUpperInvariant();
            if (!there.Contains(normalized))
                db.Roles.Add(new IdentityRole<Guid>(name) { Id = Guid.NewGuid(), NormalizedName = normalized });
        }
        await db.SaveChangesAsync(stop);
    }
}
