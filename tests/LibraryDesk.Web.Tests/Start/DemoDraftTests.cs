using LibraryDesk.Web.Start;

namespace LibraryDesk.Web.Tests.Start;

public sealed class DemoDraftTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("desk-demo-").FullName;

    private string Database => Path.Combine(_folder, "demo.db");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_start_that_was_killed_while_loading_is_begun_anew()
    {
        using (DemoDraft.Begin(Database)) File.WriteAllText(Database, "half");
        using var again = DemoDraft.Begin(Database);
        Assert.False(File.Exists(Database));
    }

    [Fact]
    public void A_finished_demo_is_kept()
    {
        using (var draft = DemoDraft.Begin(Database))
        {
            File.WriteAllText(Database, "whole");
            draft.Finish();
        }
        using var again = DemoDraft.Begin(Database);
        Assert.True(File.Exists(Database));
    }

    [Fact]
    public void A_demo_that_another_start_is_loading_is_left_alone()
    {
        using var first = DemoDraft.Begin(Database);
        File.WriteAllText(Database, "half");
        using var second = DemoDraft.Begin(Database);
        Assert.True(File.Exists(Database));
    }

    [Fact]
    public void A_database_that_came_without_a_mark_is_kept()
    {
        File.WriteAllText(Database, "somebody's");
        using var draft = DemoDraft.Begin(Database);
        draft.Finish();
        Assert.True(File.Exists(Database));
    }
}
