using LibraryDesk.Data;
using LibraryDesk.Data.Postgres;
using LibraryDesk.Data.Sqlite;
using LibraryDesk.Desk;
using LibraryDesk.Web.Features.Identify;
using LibraryDesk.Web.Features.Mail;

namespace LibraryDesk.Web.Start;

/// <summary>All services of the web server, feature by feature.</summary>
internal static class DeskServices
{
    public static void AddLibraryDesk(this WebApplicationBuilder builder)
    {
        // Also outside Development, so that an unpublished build finds the framework's own scripts.
        builder.WebHost.UseStaticWebAssets();
        var services = builder.Services;
        services.AddLibraryData(builder.Configuration, new SqliteProvider(), new PostgresProvider());
        services.AddDesk();
        services.AddDeskAccounts();
        services.AddMail(builder.Configuration);
        services.AddIdentify();
        services.AddProblemDetails();
        services.AddValidation();
        services.AddOpenApi();
        services.AddHealthChecks().AddDbContextCheck<LibraryDbContext>();
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddCascadingAuthenticationState();
        services.AddHttpContextAccessor();
        services.AddScoped<CurrentActor>();
    }
}
