using LibraryDesk.Data.People;
using LibraryDesk.Desk.People;
using LibraryDesk.Web.Features.Account;
using Microsoft.AspNetCore.Identity;

namespace LibraryDesk.Web.Start;

/// <summary>Sign-in, roles, lockout.</summary>
internal static class DeskAccounts
{
    public const string VolunteersOnly = "volunteers";
    public const string LibrariansOnly = "librarians";

    public static void AddDeskAccounts(this IServiceCollection services)
    {
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.ConfigureApplicationCookie(cookie =>
        {
            cookie.LoginPath = "/account/sign-in";
            cookie.LogoutPath = "/account/sign-out";
            cookie.AccessDeniedPath = "/account/not-allowed";
            cookie.Cookie.Name = "desk";
            cookie.ExpireTimeSpan = TimeSpan.FromDays(30);
            cookie.SlidingExpiration = true;
        });
        // A changed password or "sign out everywhere" reaches open sessions within this time.
        services.Configure<SecurityStampValidatorOptions>(stamp => stamp.ValidationInterval = TimeSpan.FromMinutes(1));
        services.AddScoped<IUserClaimsPrincipalFactory<DeskUser>, DeskClaims>();
        services.AddScoped<SignInManager<DeskUser>>();
        services.AddScoped<ISecurityStampValidator, SecurityStampValidator<DeskUser>>();
        services.AddScoped<ITwoFactorSecurityStampValidator, TwoFactorSecurityStampValidator<DeskUser>>();
        services.AddAuthorizationBuilder()
            .AddPolicy(VolunteersOnly, policy => policy.RequireRole(DeskRoles.Volunteer, DeskRoles.Librarian))
            .AddPolicy(LibrariansOnly, policy => policy.RequireRole(DeskRoles.Librarian));
    }
}
