using LibraryDesk.Web.Features.Scan;

namespace LibraryDesk.Web.Tests.Scan;

public sealed class ScannedCodeTests
{
    private static readonly string[] Own = ["desk.example.org", "127.0.0.1"];

    [Theory]
    [InlineData("Q26-0418-N", "/p/Q26-0418-N")]
    [InlineData("  q26 0418 n ", "/p/Q26-0418-N")]
    [InlineData("q260418n", "/p/Q26-0418-N")]
    [InlineData("https://desk.example.org/p/Q26-0418-N", "/p/Q26-0418-N")]
    [InlineData("HTTP://127.0.0.1:5000/P/Q26-0418-N?x=1", "/p/Q26-0418-N")]
    [InlineData("l26-031", "/lots/L26-031")]
    [InlineData("https://desk.example.org/lots/L26-031", "/lots/L26-031")]
    public void What_is_typed_or_scanned_opens_its_page(string text, string path) =>
        Assert.Equal(path, ScannedCode.Read(text, Own).Match(code => code.Path, no => no.Message));

    [Theory]
    [InlineData("Q26-0418-M", "code.check")]
    [InlineData("Q26-0481-N", "code.check")]
    [InlineData("", ScannedCode.EmptyCode)]
    [InlineData("https://other.example/p/Q26-0418-N", ScannedCode.ForeignCode)]
    [InlineData("https://desk.example.org/help", ScannedCode.OtherKindCode)]
    [InlineData("WIFI:S:home;T:WPA;P:secret;;", ScannedCode.OtherKindCode)]
    [InlineData("mailto:somebody@example.org", ScannedCode.OtherKindCode)]
    [InlineData("4006381333931", ScannedCode.OtherKindCode)]
    [InlineData("A26-001", ScannedCode.OtherKindCode)]
    public void Anything_else_gets_a_clear_answer(string text, string refusal) =>
        Assert.Equal(refusal, ScannedCode.Read(text, Own).Refusal?.Code);
}
