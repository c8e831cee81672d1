using LibraryDesk.Desk;
using LibraryDesk.Web;
using LibraryDesk.Web.Start;

var builder = WebApplication.CreateBuilder(DemoStart.WithoutSwitch(args));
DemoStart.Prepare(builder, args);
builder.AddLibraryDesk();

var app = builder.Build();
if (Listening.FaultOf(app.Configuration) is { } fault)
{
    await Console.Error.WriteLineAsync(fault);
    return 1;
}
await LibraryStart.PrepareAsync(app.Services, app.Lifetime.ApplicationStopping);
if (!await DemoStart.LoadAsync(app)) return 1;
app.UseLibraryDesk();
app.MapStaticAssets();
app.MapLibraryEndpoints();
app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
await FirstRun.TellAsync(app);
return await Listening.RunAsync(app) ? 0 : 1;

/// <summary>Reached by the tests that start the whole server.</summary>
public partial class Program;
