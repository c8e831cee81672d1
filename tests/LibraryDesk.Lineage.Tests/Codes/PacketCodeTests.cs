using LibraryDesk.Lineage.Codes;

namespace LibraryDesk.Lineage.Tests.Codes;

public class PacketCodeTests
{
    private const string AllCharacters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    public static TheoryData<char, int, int> Samples()
    {
        var data = new TheoryData<char, int, int>();
        foreach (var library in CheckCharacter.Letters) data.Add(library, 2026, 418);
        foreach (var number in new[] { 1, 9, 10, 99, 999, 1000, 9999, 10_000, 33_333, 123_456, 9_999_999 }) data.Add('Q', 2000 + (number % 100), number);
        return data;
    }

    [Theory, MemberData(nameof(Samples))]
    public void Every_single_wrong_character_is_caught(char library, int year, int number)
    {
        var right = new PacketCode(library, year, number);
        var plain = right.ToString().Replace("-", "", StringComparison.Ordinal);
        for (var place = 0; place < plain.Length; place++)
        {
            foreach (var wrong in AllCharacters)
            {
                if (wrong == plain[place]) continue;
                var slip = plain[..place] + wrong + plain[(place + 1)..];
                // O, I and L are read as the digits they look like: that is the same code, not a slip.
                if (PacketCode.TryParse(slip, out var read, out _)) Assert.Equal(right, read);
            }
        }
    }

    [Theory, MemberData(nameof(Samples))]
    public void Every_swap_of_neighbours_is_caught(char library, int year, int number)
    {
        var plain = new PacketCode(library, year, number).ToString().Replace("-", "", StringComparison.Ordinal);
        for (var place = 0; place + 1 < plain.Length; place++)
        {
            if (plain[place] == plain[place + 1]) continue;
            var swapped = plain[..place] + plain[place + 1] + plain[place] + plain[(place + 2)..];
            Assert.False(PacketCode.TryParse(swapped, out _, out _), swapped);
        }
    }

    [Fact]
    public void Every_number_of_a_year_catches_every_slip_and_swap_of_its_digits()
    {
        for (var number = 1; number < 10_000; number++)
        {
            var plain = new PacketCode('Q', 2026, number).ToString().Replace("-", "", StringComparison.Ordinal);
            for (var place = 1; place < plain.Length - 1; place++)
            {
                for (var digit = '0'; digit <= '9'; digit++)
                {
                    if (digit != plain[place]) Assert.False(PacketCode.TryParse(plain[..place] + digit + plain[(place + 1)..], out _, out _));
                }

                if (place + 2 < plain.Length && plain[place] != plain[place + 1])
                {
                    Assert.False(PacketCode.TryParse(plain[..place] + plain[place + 1] + plain[place] + plain[(place + 2)..], out _, out _));
                }
            }
        }
    }

    [Theory]
    [InlineData("q26-0418-n")]
    [InlineData("Q260418N")]
    [InlineData("  Q26 0418 N ")]
    [InlineData("Q26-O4I8-N")]
    [InlineData("Q26–0418–N")]
    public void Small_letters_spaces_missing_hyphens_and_look_alikes_are_forgiven(string typed)
    {
        Assert.Equal(new PacketCode('Q', 2026, 418), PacketCode.Read(typed).Match(code => code, no => throw new InvalidOperationException(no.Message)));
    }

    [Theory]
    [InlineData("", "code.empty")]
    [InlineData("Q26", "code.length")]
    [InlineData("O26-0418-N", "code.library")]
    [InlineData("Q26-0418-7", "code.check-missing")]
    [InlineData("Q26-04A8-N", "code.shape")]
    [InlineData("Q26-0000-N", "code.number")]
    [InlineData("Q26-0418-X", "code.check")]
    public void A_refusal_says_what_is_wrong(string typed, string code) => Assert.Equal(code, PacketCode.Read(typed).Refusal?.Code);

    [Fact]
    public void A_code_reads_back_as_printed()
    {
        var code = new PacketCode('Q', 2026, 123_456);
        Assert.Equal(code, PacketCode.Read(code.ToString()).Match(read => read, _ => default));
        Assert.True(new PacketCode('Q', 2026, 9_999_999).ToString().Length <= PacketCode.Length);
    }

    [Theory]
    [InlineData("a26007", 2026, 7)]
    [InlineData("A 26-1007", 2026, 1007)]
    public void Accession_codes_are_forgiving_too(string typed, int year, int number) =>
        Assert.Equal(new AccessionCode(year, number), AccessionCode.Read(typed).Match(code => code, _ => default));

    [Theory]
    [InlineData("A26-007", "code.kind")]
    [InlineData("L26", "code.length")]
    [InlineData("L26-0007", "code.number")]
    [InlineData("L2x-007", "code.shape")]
    public void Lot_codes_say_what_is_wrong(string typed, string code) => Assert.Equal(code, LotCode.Read(typed).Refusal?.Code);
}
