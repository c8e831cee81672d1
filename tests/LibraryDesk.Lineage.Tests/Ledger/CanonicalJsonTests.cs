using System.Text.Json;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Lineage.Tests.Ledger;

/// <summary>Examples from RFC 8785 (Rundgren, Jordan, Erdtman 2020) and FIPS 180-4 (NIST 2015, example values).</summary>
public class CanonicalJsonTests
{
    // RFC 8785, Appendix B, all finite rows.
    [Theory]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(0x8000000000000000, "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x8000000000000001, "-5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0xffefffffffffffff, "-1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0xc340000000000000, "-9007199254740992")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x44b52d02c7e14af7, "1.0000000000000001e+23")]
    [InlineData(0x444b1ae4d6e2ef4e, "999999999999999700000")]
    [InlineData(0x444b1ae4d6e2ef4f, "999999999999999900000")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    [InlineData(0x41b3de4355555554, "333333333.33333325")]
    [InlineData(0x41b3de4355555555, "333333333.3333333")]
    [InlineData(0x41b3de4355555556, "333333333.3333334")]
    [InlineData(0x41b3de4355555557, "333333333.33333343")]
    [InlineData(0xbecbf647612f3696, "-0.0000033333333333333333")]
    [InlineData(0x43143ff3c1cb0959, "1424953923781206.2")]
    public void Numbers_are_written_as_in_appendix_B(ulong bits, string expected) =>
        Assert.Equal(expected, CanonicalJson.Number(BitConverter.UInt64BitsToDouble(bits)));

    [Theory]
    [InlineData(0x7fffffffffffffff)]
    [InlineData(0x7ff0000000000000)]
    public void Numbers_that_JSON_has_not_are_refused_as_in_appendix_B(ulong bits) =>
        Assert.Throws<JsonException>(() => CanonicalJson.Number(BitConverter.UInt64BitsToDouble(bits)));

    [Fact]
    public void The_example_of_section_3_2_2_comes_out_as_printed()
    {
        const string given = """
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """;
        const string expected = """{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""";
        Assert.Equal(expected, CanonicalJson.Write(given));
    }

    [Fact]
    public void Names_are_sorted_by_UTF_16_code_units_as_in_section_3_2_3()
    {
        const string given = """
            {
              "\u20ac": "Euro Sign",
              "\r": "Carriage Return",
              "\ufb33": "Hebrew Letter Dalet With Dagesh",
              "1": "One",
              "\ud83d\ude00": "Emoji: Grinning Face",
              "\u0080": "Control",
              "\u00f6": "Latin Small Letter O With Diaeresis"
            }
            """;
        const string expected = "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\",\"\u00f6\":\"Latin Small Letter O With Diaeresis\","
            + "\"\u20ac\":\"Euro Sign\",\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}";
        Assert.Equal(expected, CanonicalJson.Write(given));
    }

    [Theory]
    [InlineData("{\"a\":1,\"a\":2}")]
    [InlineData("{\"a\":\"\\ud800\"}")]
    [InlineData("{\"a\":1e400}")]
    [InlineData("{\"a\":")]
    public void What_RFC_7493_bars_is_refused(string json) => Assert.ThrowsAny<Exception>(() => CanonicalJson.Write(json));

    // FIPS 180-4 example values: one block, two blocks, the empty message, and a million letters a.
    [Theory]
    [InlineData("abc", 1, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", 1, "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    [InlineData("", 1, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("a", 1_000_000, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0")]
    public void Hashes_match_the_published_SHA_256_values(string message, int times, string expected) =>
        Assert.Equal(expected, EntryHash.Of(string.Concat(Enumerable.Repeat(message, times))).Hex);
}
