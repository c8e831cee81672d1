using System.Diagnostics;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests;

public class ForsakenFolderTests
{
    [Fact]
    public void The_folder_of_a_process_that_is_gone_is_cleared_away()
    {
        var folder = Directory.CreateTempSubdirectory($"ldpg{GoneProcess()}-").FullName;
        Forsaken.ClearAway(_ => { });
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public void The_folder_of_a_living_process_stays()
    {
        var folder = Forsaken.NewFolder();
        try
        {
            Forsaken.ClearAway(_ => { });
            Assert.True(Directory.Exists(folder));
        }
        finally
        {
            Directory.Delete(folder);
        }
    }

    [Theory]
    [InlineData("/tmp/ldpgAbC12x")]
    [InlineData("/tmp/ldpgx1-Ab")]
    [InlineData("/tmp/other1-Ab")]
    public void A_folder_that_names_no_process_is_left_alone(string folder) => Assert.False(Forsaken.IsForsaken(folder));

    private static int GoneProcess()
    {
        using var process = Process.Start("true");
        process.WaitForExit();
        return process.Id;
    }
}
