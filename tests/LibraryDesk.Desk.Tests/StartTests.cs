using LibraryDesk.Data;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests;

public class StartTests
{
    [Theory, OnBoth]
    public async Task Servers_that_start_together_make_the_tables_once(string database)
    {
        var connectionString = await MigratedCopy.MakeEmptyAsync(database);
        var servers = Enumerable.Range(0, 3).Select(_ => TestLibrary.ServerOn(database, connectionString)).ToArray();
        try
        {
            await Task.WhenAll(servers.Select(server => Task.Run(() => LibraryStart.PrepareAsync(server, default))));
            await using var db = await servers[0].GetRequiredService<IDbContextFactory<LibraryDbContext>>().CreateDbContextAsync();
            var applied = (await db.Database.GetAppliedMigrationsAsync()).ToArray();
            Assert.Equal(db.Database.GetMigrations(), applied);
            Assert.Equal(applied.Distinct(), applied);
            Assert.Equal(3, await db.Roles.CountAsync());
        }
        finally
        {
            foreach (var server in servers) await server.DisposeAsync();
            await MigratedCopy.DropAsync(database, connectionString);
        }
    }
}
