using LibraryDesk.Web.Features.Scan;

namespace LibraryDesk.Web.Tests.SeedPages;

public class ScannedCodeTests
{
    [Theory]
    [InlineData("https://desk.example.org/p/Q26-0418-N", "Q26-0418-N")]
    [InlineData("http://127.0.0.1:5280/p/q26-0418-n?view=list#lineage", "Q26-0418-N")]
    [InlineData("https://desk.example.org/lots/L26-031/", "L26-031")]
    [InlineData(" q26 0418 n\n", "Q26 0418 N")]
    [InlineData("4006381333931", "4006381333931")]
    public void A_scan_comes_down_to_its_code(string scanned, string code) => Assert.Equal(code, ScannedCode.Read(scanned));
}
