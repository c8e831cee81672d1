using LibraryDesk.Data.People;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.People;

internal static class PeopleRegistration
{
    /// <summary>Accounts and their acts. The acts use Identity's own scoped stores, so they are scoped too.</summary>
    public static void AddPeople(this IServiceCollection services)
    {
        services.AddDataProtection().SetApplicationName("LibraryDesk").PersistKeysToDbContext<LibraryDbContext>();
        services.AddIdentityCore<DeskUser>(identity =>
            {
                identity.User.RequireUniqueEmail = true;
                // NIST SP 800-63B: length over composition rules.
                identity.Password.RequiredLength = 10;
                identity.Password.RequireDigit = false;
                identity.Password.RequireLowercase = false;
                identity.Password.RequireUppercase = false;
                identity.Password.RequireNonAlphanumeric = false;
                identity.Lockout.MaxFailedAccessAttempts = 6;
                identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(10);
            })
            .AddRoles<IdentityRole<Guid>>()
            .AddEntityFrameworkStores<LibraryDbContext>()
            .AddDefaultTokenProviders();
        services.AddScoped<Accounts>();
        services.AddScoped<FirstLibrarian>();
        services.AddScoped<SignUp>();
        services.AddScoped<Invitations>();
        services.AddScoped<PeopleDirectory>();
        services.AddScoped<ReadPerson>();
        services.AddScoped<PasswordReset>();
    }
}
