using System.Data.Common;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace LibraryDesk.Web.Tests.Pages;

/// <summary>
/// Lets the first reads of a request be there at once and makes it wait for all after them. A page is drawn at its first wait, with what it has
/// by then; which wait that is depends on the database and on the moment.
/// </summary>
internal sealed class Waits : DbCommandInterceptor, IStartupFilter
{
    /// <summary>Header that says how many reads are there at once.</summary>
    public const string Header = "X-Reads-At-Once";

    private static readonly AsyncLocal<Count?> Now = new();

    /// <summary>Reads of the last request that told how many are there at once.</summary>
    public int LastReads { get; private set; }

    public override async ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
    {
        if (Now.Value is { } count && count.Reads++ >= count.AtOnce) await Task.Yield();
        return result;
    }

    public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
    {
        app.Use(async (http, rest) =>
        {
            if (!int.TryParse(http.Request.Headers[Header], out var atOnce))
            {
                await rest(http);
                return;
            }
            var count = new Count { AtOnce = atOnce };
            Now.Value = count;
            await rest(http);
            LastReads = count.Reads;
        });
        next(app);
    };

    private sealed class Count
    {
        public int AtOnce { get; init; }

        public int Reads { get; set; }
    }
}
