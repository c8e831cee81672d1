using Microsoft.Data.Sqlite;
using Microsoft.Playwright;
using Npgsql;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// The main job in one run: seed comes in and goes out, a member's plant from it loses its label, is filed, reviewed, determined; the
/// determination becomes a name claim; the seed comes home; the chain of the new packet tells of all of it; and a changed byte is found.
/// </summary>
public class WholeStory(DeskBrowser browser) : IClassFixture<DeskBrowser>
{
    private const string Taxon = "capsicum-baccatum";

    [Theory, OnBoth]
    public async Task From_a_donors_seed_to_a_determined_plant_and_home_again(string database)
    {
        await using var server = await DeskServer.StartAsync(database);
        await server.TellOnFailureAsync(() => RunAsync(server));
    }

    private async Task RunAsync(DeskServer server)
    {
        var librarian = await browser.OpenAsync(server, DeskBrowser.Laptop);
        var first = await browser.OpenAsync(server, DeskBrowser.Laptop);
        var second = await browser.OpenAsync(server, DeskBrowser.Laptop);
        var member = await browser.OpenAsync(server, DeskBrowser.Phone);
        await librarian.SetUpAsync(server, "Hester Lorne", "hester@example.org");
        await librarian.InviteAsync(first, "Wren Castell", "wren@example.org", "volunteer");
        await librarian.InviteAsync(second, "Jory Pell", "jory@example.org", "volunteer");
        await member.SignUpAsync("Maren Oduya", "maren@example.org");

        var lot = await librarian.TakeSeedInAsync("Odile Brandt", "Ferryman's Lamp", Taxon);
        var packet = await librarian.PutUpPacketsAsync(lot, 3);
        await librarian.LendAsync(packet, "maren@example.org");

        var number = await member.FileCaseAsync(
            "Pepper in the blue pot", packet, ("corolla_spots", "green-yellow"), ("anther_colour", "yellow"), ("seed_colour", "straw"));
        await member.Locator(".cands .lead").GetByText("Capsicum baccatum").First.WaitForAsync();

        await first.SealOpinionAsync(number, Taxon);
        await second.SealOpinionAsync(number, Taxon);
        await first.FinishReviewAsync(number);
        await second.FinishReviewAsync(number);
        await member.GotoAsync($"/cases/{number}");
        await member.SeesAsync("Determination");

        await librarian.ClaimFromCaseAsync(number);
        var home = await member.ReturnSeedAsync(packet);
        await librarian.LiftHoldAsync(home);
        var newPacket = await librarian.PutUpPacketsAsync(home, 2);

        var visitor = await browser.OpenAsync(server, DeskBrowser.Phone, script: false);
        await visitor.GotoAsync($"/p/{newPacket}");
        await visitor.SeesAsync(lot);
        await Assertions.Expect(visitor.Locator("main")).Not.ToContainTextAsync("Maren");
        await librarian.GotoAsync($"/lots/{home}");
        await librarian.SeesAsync("Odile Brandt");
        await librarian.SeesAsync($"case {number}");

        var (code, output) = await server.DeskAsync("verify");
        Assert.True(code == 0, output);
        await ChangeOneByteAsync(server);
        (code, output) = await server.DeskAsync("verify");
        Assert.Equal(1, code);
        Assert.Contains("3", output, StringComparison.Ordinal);
    }

    /// <summary>As somebody with the database file in hand would: past the guard, one letter of the third entry.</summary>
    private static async Task ChangeOneByteAsync(DeskServer server)
    {
        const string Change = "update ledger_entries set payload = replace(payload, 'a', 'b') where sequence = 3";
        if (server.Database == "sqlite")
        {
            await using var file = new SqliteConnection(server.ConnectionString);
            await file.OpenAsync();
            await using var command = file.CreateCommand();
            command.CommandText = "drop trigger ledger_entries_never_change; " + Change;
            Assert.Equal(1, await command.ExecuteNonQueryAsync());
            return;
        }
        await using var connection = new NpgsqlConnection(server.ConnectionString);
        await connection.OpenAsync();
        await using var update = new NpgsqlCommand("alter table ledger_entries disable trigger all; " + Change, connection);
        Assert.Equal(1, await update.ExecuteNonQueryAsync());
    }
}
