using System.Text.Json;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Lineage.Tests.Ledger;

/// <summary>The quick look must never call canonical what the slow way does not.</summary>
public class CanonicalScanTests
{
    private static readonly char[] _alphabet = "{}[]\":,\\u01-2.e tabcnul\u0007€\ud83d".ToCharArray();

    [Theory, MemberData(nameof(ChainTests.EveryKind), MemberType = typeof(ChainTests))]
    public void Damaged_acts_are_judged_as_the_slow_way_judges_them(SeedAct act)
    {
        var text = SeedActJson.Write(act);
        Assert.True(SeedActJson.IsCanonical(text));
        var random = new Random(7);
        for (var round = 0; round < 400; round++)
        {
            var at = random.Next(text.Length);
            var damaged = random.Next(3) switch
            {
                0 => text.Remove(at, 1),
                1 => text.Insert(at, _alphabet[random.Next(_alphabet.Length)].ToString()),
                _ => text[..at] + _alphabet[random.Next(_alphabet.Length)] + text[(at + 1)..],
            };
            Assert.Equal(Slowly(damaged), Quickly(damaged));
        }
    }

    [Theory]
    [InlineData("""{"b":1,"a":2}""")]
    [InlineData("""{"a":1,"a":2}""")]
    [InlineData("""{"a":01}""")]
    [InlineData("""{"a":-0}""")]
    [InlineData("""{"a":1.0}""")]
    [InlineData("""{"a":1e2}""")]
    [InlineData("""{"a":"\/"}""")]
    [InlineData("""{"a":"\u0041"}""")]
    [InlineData("""{"a":1} """)]
    [InlineData("""[1,]""")]
    public void What_is_not_canonical_is_seen(string json) => Assert.False(Quickly(json));

    private static bool Slowly(string json)
    {
        try
        {
            return CanonicalJson.Write(json) == json;
        }
        catch (Exception wrong) when (wrong is JsonException or ArgumentException)
        {
            return false;
        }
    }

    private static bool Quickly(string json)
    {
        try
        {
            return SeedActJson.IsCanonical(json);
        }
        catch (Exception wrong) when (wrong is JsonException or ArgumentException)
        {
            return false;
        }
    }
}
