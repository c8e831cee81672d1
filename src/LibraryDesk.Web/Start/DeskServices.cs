using LibraryDesk.Data;
using LibraryDesk.Data.Postgres;
using LibraryDesk.Data.Sqlite;
using LibraryDesk.Desk;
using LibraryDesk.Web.Features.Home;
using LibraryDesk.Web.Features.Identify;
using LibraryDesk.Web.Features.Mail;
using LibraryDesk.Web.Features.Notices;
using LibraryDesk.Web.Features.Photos;

namespace LibraryDesk.Web.Start;

/// <summary>All services of the web server, feature by feature.</summary>
internal static class DeskServices
{
    public static void AddLibraryDesk(this WebApplicationBuilder builder)
    {
        // Also outside Development, so that an unpublished build finds the framework's own scripts.
        builder.WebHost.UseStaticWebAssets();
        // An unpublished build would else serve its files as they change, which means unpacked and never kept by the browser.
        if (!builder.Environment.IsDevelopment()) builder.Configuration["ReloadStaticAssetsAtRuntime"] ??= "false";
        var services = builder.Services;
        services.AddLibraryData(builder.Configuration, new SqliteProvider(), new PostgresProvider());
        services.AddDesk();
        services.AddDeskAccounts();
        services.AddMail(builder.Configuration);
        services.AddHostedService<SeasonWatch>();
        services.AddIdentify();
        services.AddSpokenLanguages(builder.Configuration);
        builder.Configuration.UseShownUnits();
        services.AddHostedService<PhotoSweep>();
        services.AddProblemDetails();
        // Pages only: files are compressed when they are built. Tokens in pages are new with every answer, so their length tells nothing.
        services.AddResponseCompression(compression =>
        {
            compression.EnableForHttps = true;
            compression.MimeTypes = ["text/html"];
        });
        services.AddValidation();
        services.AddOpenApi();
        services.AddHealthChecks().AddDbContextCheck<LibraryDbContext>();
        services.AddRazorComponents().AddInteractiveServerComponents();
        services.AddCascadingAuthenticationState();
        services.AddHttpContextAccessor();
        services.AddScoped<CurrentActor>();
        services.AddSingleton<StaffTodo>();
    }
}
