namespace LibraryDesk.Web.Tests.Language;

public class SpokenSentencesTests
{
    [Theory]
    [InlineData("""<p>@Say["Sign in"]</p>""", "Sign in")]
    [InlineData("""<p>@Say[$"Lot {lot.Code} has {seeds:0.0} seeds"]</p>""", "Lot {0} has {1:0.0} seeds")]
    [InlineData("""Say.Count(n, $"{n} packet", $"{n} packets")""", "{0} packet", "{0} packets")]
    [InlineData("""Say[_out ? "Out" : "In"]""", "Out", "In")]
    [InlineData("""Say.Linked($"[Open it](/lots/{(code ?? "x")}) now")""", "[Open it](/lots/{0}) now")]
    [InlineData("""Say["A \"quoted\" word"]""", "A \"quoted\" word")]
    [InlineData("""Essay["no"]""")]
    public void Finds_what_is_spoken(string source, params string[] sentences) => Assert.Equal(sentences, SpokenSentences.In(source));

    [Theory]
    [InlineData("""return new Refusal(FarCode, $"{day:d MMMM yyyy} is too far.");""", "{0:d MMMM yyyy} is too far.")]
    [InlineData("""=> new("case.date", late ? "Too late." : "Too early.");""", "Too late.", "Too early.")]
    [InlineData("""Packet x => new(Rules.GoneCode, $"Packet {x.Code} is gone."), _ => new(x, "no")""", "Packet {0} is gone.")]
    [InlineData("""Checks.Text(why, "Say why.") ?? Sentence.Of($"health")""", "health", "Say why.")]
    public void Finds_what_is_refused(string source, params string[] sentences) => Assert.Equal(sentences, RefusalSentences.In(source));
}
