namespace LibraryDesk.Cli.Tests;

public sealed class GuideVerbTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("desk-guide-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [InlineData("capsicum")]
    [InlineData("cucurbita")]
    [InlineData("phaseolus")]
    [InlineData("brassica")]
    public async Task Built_in_guides_have_no_faults(string guide)
    {
        var outcome = await DeskProcess.RunAsync(null, "guide", "validate", guide);
        Assert.Equal(0, outcome.ExitCode);
        Assert.Contains("no faults", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_faulty_guide_is_told_line_by_line()
    {
        var path = Write("bad.json", "{\n  \"format\": 1,\n  \"id\": 5\n}\n");
        var outcome = await DeskProcess.RunAsync(null, "guide", "validate", path);
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains("line 3", outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(outcome.Output);
    }

    [Fact]
    public async Task A_guide_is_learned_judged_and_used()
    {
        var sheet = Write("sheet.csv", Sheet());
        var guide = Path.Combine(_folder.FullName, "learned.json");
        Assert.Equal(0, (await DeskProcess.RunAsync(null, "guide", "learn", "--labelled", sheet, "--out", guide, "--id", "parva")).ExitCode);
        Assert.Equal(0, (await DeskProcess.RunAsync(null, "guide", "validate", guide)).ExitCode);
        var judged = await DeskProcess.RunAsync(null, "evaluate", "--guide", guide, "--labelled", sheet);
        Assert.Equal(0, judged.ExitCode);
        foreach (var figure in (string[])["cases 40", "accuracy 1.0000", "brier ", "log-loss ", "calibration-error ", "confusion"])
        {
            Assert.Contains(figure, judged.Output, StringComparison.Ordinal);
        }

        Assert.Contains("parva-alba,20,0", judged.Output, StringComparison.Ordinal);
        var ranked = await DeskProcess.RunAsync("case,trait,state\nx,spots,many\n", "identify", "--guide", guide, "--answers", "-");
        Assert.Contains("\"id\":\"parva-nigra\"", ranked.Output[..60], StringComparison.Ordinal);
        Assert.Equal(0, (await DeskProcess.RunAsync(null, "evaluate", "--folds", "5", "--labelled", sheet)).ExitCode);
    }

    [Theory]
    [InlineData("case,taxon,trait\n1,a,b\n", "row 1")]
    [InlineData("case,taxon,trait,state\n1,a,t,x\n1,b,t,x\n", "row 3")]
    [InlineData("case,taxon,trait,state\n1,,t,x\n", "row 2")]
    [InlineData("case,taxon,trait,state\n", "no plant")]
    [InlineData("case,taxon,trait,state\n1,a,t,x\n2,a,t,y\n", "two taxa")]
    public async Task A_sheet_that_cannot_be_learned_from_is_refused(string sheet, string named)
    {
        var outcome = await DeskProcess.RunAsync(null, "guide", "learn", "--labelled", Write("sheet.csv", sheet));
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains(named, outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(outcome.Output);
    }

    [Fact]
    public async Task A_taxon_the_guide_does_not_have_is_named()
    {
        var outcome = await DeskProcess.RunAsync(null, "evaluate", "--guide", "capsicum", "--labelled", Write("sheet.csv", "case,taxon,trait,state\n1,Parva alba,seed_colour,straw\n"));
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains("Parva alba", outcome.Errors, StringComparison.Ordinal);
    }

    private static string Sheet() => "case,taxon,trait,state\n" + string.Concat(Enumerable.Range(0, 40).Select(i => i % 2 == 0
        ? $"{i},Parva alba,spots,none\n{i},Parva alba,leaf_mm,{20 + (i / 2)}.5\n"
        : $"{i},Parva nigra,spots,many\n{i},Parva nigra,leaf_mm,{60 + i}.5\n"));

    private string Write(string name, string text)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, text);
        return path;
    }
}
