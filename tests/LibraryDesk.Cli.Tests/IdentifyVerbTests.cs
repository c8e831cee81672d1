using System.Text;
using System.Text.Json;

namespace LibraryDesk.Cli.Tests;

public sealed class IdentifyVerbTests
{
    private const string Header = "case,trait,state\n";

    [Fact]
    public async Task Each_case_is_one_line_of_json_with_all_that_is_promised()
    {
        var outcome = await Identify(Header + "a,seed_colour,black\na,corolla_colour,purple\nb,corolla_spots,green-yellow\n");
        Assert.Equal(0, outcome.ExitCode);
        Assert.Equal(2, outcome.Lines.Length);
        using var line = JsonDocument.Parse(outcome.Lines[0]);
        var root = line.RootElement;
        Assert.Equal("a", root.GetProperty("case").GetString());
        Assert.Equal("capsicum-pubescens", root.GetProperty("candidates")[0].GetProperty("id").GetString());
        Assert.Equal(1, root.GetProperty("candidates").EnumerateArray().Sum(c => c.GetProperty("probability").GetDouble()), 9);
        Assert.InRange(root.GetProperty("forms").EnumerateArray().Sum(c => c.GetProperty("probability").GetDouble()), 0.98, 1 + 1e-9);
        Assert.True(root.GetProperty("bestNextLooks").GetArrayLength() > 0);
        Assert.InRange(root.GetProperty("typicality").GetProperty("tail").GetDouble(), 0, 1);
        Assert.Equal("capsicum", root.GetProperty("guide").GetProperty("id").GetString());
        Assert.NotEmpty(root.GetProperty("guide").GetProperty("version").GetString()!);
    }

    [Fact]
    public async Task Among_and_a_flat_prior_keep_to_the_named_candidates()
    {
        var outcome = await Identify(Header + "a,,\n", "--among", "capsicum-annuum,capsicum-frutescens", "--prior", "flat");
        using var line = JsonDocument.Parse(outcome.Lines[0]);
        Assert.Equal(2, line.RootElement.GetProperty("candidates").GetArrayLength());
        Assert.Equal(0.5, line.RootElement.GetProperty("candidates")[0].GetProperty("probability").GetDouble(), 12);
    }

    [Theory]
    [InlineData("a,seed_colour,black\nb,nonsense,x\n", "row 3")]
    [InlineData("a,seed_colour,black\nb,seed_colour,green\n", "row 3")]
    [InlineData("a,seed_colour,straw\na,seed_colour,green\n", "row 3")]
    [InlineData("a,fruit_length_mm,long\n", "row 2")]
    [InlineData("a,fruit_length_mm,-4\n", "row 2")]
    [InlineData("a,fruit_length_mm,NaN\n", "row 2")]
    [InlineData("a,fruit_length_mm,15..12\n", "row 2")]
    [InlineData("a,fruit_length_mm,900000\n", "row 2")]
    [InlineData("a,seed_colour,\n", "row 2")]
    [InlineData("a,seed_colour\n", "row 2")]
    [InlineData(",seed_colour,black\n", "row 2")]
    public async Task A_wrong_row_is_named_and_nothing_is_printed(string rows, string named)
    {
        var outcome = await Identify(Header + rows);
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains(named, outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(outcome.Output);
    }

    [Fact]
    public async Task A_fault_in_the_last_of_many_cases_prints_nothing()
    {
        var rows = new StringBuilder(Header);
        for (var i = 0; i < 2000; i++) rows.Append(System.Globalization.CultureInfo.InvariantCulture, $"c{i},fruit_position,erect\n");
        rows.Append("last,fruit_position,sideways\n");
        var outcome = await Identify(rows.ToString());
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains("row 2002", outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(outcome.Output);
    }

    [Fact]
    public async Task Rows_of_a_case_may_stand_apart()
    {
        var apart = await Identify(Header + "a,seed_colour,black\nb,fruit_position,erect\na,corolla_colour,purple\n");
        var together = await Identify(Header + "a,seed_colour,black\na,corolla_colour,purple\nb,fruit_position,erect\n");
        Assert.Equal(together.Output, apart.Output);
    }

    [Fact]
    public async Task Rows_of_one_person_and_look_are_either_of_these_and_sureness_is_read()
    {
        var either = await Identify("case,trait,state,sure,person,look\na,seed_colour,straw,fairly,p,1\na,seed_colour,brown,fairly,p,1\na,seed_colour,black,fairly,p,1\n");
        var nothing = await Identify("case,trait,state\na,,\n");
        using var all = JsonDocument.Parse(either.Lines[0]);
        using var none = JsonDocument.Parse(nothing.Lines[0]);
        Assert.Equal(Probability(none, 0), Probability(all, 0), 9);
        var mixed = await Identify("case,trait,state,sure\na,seed_colour,straw,fairly\na,seed_colour,brown,faint\n");
        Assert.Equal(2, mixed.ExitCode);
        Assert.Contains("row 3", mixed.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_column_and_an_unknown_candidate_or_guide_are_refused()
    {
        Assert.Equal(2, (await Identify("case,state\na,x\n")).ExitCode);
        Assert.Equal(2, (await Identify("")).ExitCode);
        Assert.Equal(2, (await Identify(Header, "--among", "capsicum-nothing")).ExitCode);
        Assert.Equal(2, (await DeskProcess.RunAsync(Header, "identify", "--guide", "no-such", "--answers", "-")).ExitCode);
        Assert.Equal(2, (await DeskProcess.RunAsync(Header, "identify", "--guide", "capsicum", "--answers", "/no/such/file.csv")).ExitCode);
        Assert.Equal(2, (await DeskProcess.RunAsync(Header, "identify", "--guide", "capsicum")).ExitCode);
    }

    [Fact]
    public async Task Looks_at_parts_to_come_are_worth_waiting_for()
    {
        var outcome = await Identify(Header + "a,fruit_position,erect\n", "--parts", "leaves,flowers");
        using var line = JsonDocument.Parse(outcome.Lines[0]);
        Assert.All(line.RootElement.GetProperty("bestNextLooks").EnumerateArray(), l => Assert.Matches("^(leaves|flowers)$", l.GetProperty("part").GetString()));
        Assert.All(line.RootElement.GetProperty("worthWaitingFor").EnumerateArray(), l => Assert.DoesNotMatch("^(leaves|flowers)$", l.GetProperty("part").GetString()));
        Assert.True(line.RootElement.GetProperty("worthWaitingFor").GetArrayLength() > 0);
        var wrong = await Identify(Header, "--parts", "roots");
        Assert.Equal(2, wrong.ExitCode);
        Assert.Contains("roots", wrong.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_dangerous_look_alike_at_one_in_twenty_puts_its_caution_before_the_odds()
    {
        var outcome = await Identify(Header + "a,corolla_shape,campanulate\na,corolla_colour,purple\na,fruit_colour_mature,purple-black\na,fruit_shape,almost round\n");
        using var line = JsonDocument.Parse(outcome.Lines[0]);
        Assert.Contains(line.RootElement.GetProperty("cautions").EnumerateArray(), c => c.GetProperty("candidate").GetString() == "atropa-bella-donna" && c.GetProperty("text").GetString()!.Length > 0);
        Assert.True(outcome.Lines[0].IndexOf("\"cautions\"", StringComparison.Ordinal) < outcome.Lines[0].IndexOf("\"candidates\"", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("60..80", "60-80")]
    [InlineData(">=60", ">= 60")]
    [InlineData("<=60", "<= 60")]
    public async Task Ranges_and_open_ends_of_a_measure_are_read(string one, string same)
    {
        var outcome = await Identify(Header + $"a,fruit_length_mm,{one}\n");
        Assert.Equal(0, outcome.ExitCode);
        Assert.Equal(outcome.Output, (await Identify(Header + $"a,fruit_length_mm,{same}\n")).Output);
    }

    [Fact]
    public async Task A_guide_version_that_is_gone_is_named_with_the_one_there_is()
    {
        var gone = await DeskProcess.RunAsync(Header, "identify", "--guide", "capsicum@1999.1", "--answers", "-");
        Assert.Equal(2, gone.ExitCode);
        Assert.Contains("1999.1 is gone", gone.Errors, StringComparison.Ordinal);
        Assert.Empty(gone.Output);
    }

    [Fact]
    public async Task Ten_thousand_answers_of_one_case_are_refused()
    {
        var rows = new StringBuilder("case,trait,state,sure,person\n");
        for (var i = 0; i < 10_000; i++) rows.Append(System.Globalization.CultureInfo.InvariantCulture, $"a,fruit_position,erect,,p{i}\n");
        var outcome = await Identify(rows.ToString());
        Assert.Equal(2, outcome.ExitCode);
        Assert.Contains("10000 answers in one case", outcome.Errors, StringComparison.Ordinal);
        Assert.Empty(outcome.Output);
    }

    [Fact]
    public async Task A_header_alone_prints_nothing_and_is_no_error()
    {
        var outcome = await Identify(Header);
        Assert.Equal(0, outcome.ExitCode);
        Assert.Empty(outcome.Output);
    }

    private static double Probability(JsonDocument line, int candidate) =>
        line.RootElement.GetProperty("candidates")[candidate].GetProperty("probability").GetDouble();

    private static Task<DeskProcess.Outcome> Identify(string csv, params string[] more) =>
        DeskProcess.RunAsync(csv, ["identify", "--guide", "capsicum", "--answers", "-", .. more]);
}
