using System.Globalization;

namespace LibraryDesk.Lineage.Codes;

/// <summary>The shape that accession and lot codes share: a kind letter, two digits of the year, a running number of three digits or more.</summary>
internal static class RunningCode
{
    public const int MostNumber = 9_999_999;

    public static void Check(int year, int number)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(year, 2000);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(year, 2099);
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, MostNumber);
    }

    public static string Write(char kind, int year, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{kind}{year % 100:00}-{number:000}");

    public static Outcome<(int Year, int Number)> Read(char kind, Sentence what, string example, string? typed)
    {
        var plain = CodeText.Plain(typed);
        if (plain.Length == 0) return new Refusal("code.empty", $"Type the {what} code, for example {example}.");
        if (plain[0] != kind) return new Refusal("code.kind", $"A {what} code begins with {kind}, for example {example}. This begins with {plain[0]}.");
        if (CodeText.Digits(plain.AsSpan(1)) is not { } digits) return new Refusal("code.shape", $"After {kind} come digits only: two for the year, then the number, for example {example}.");
        if (digits.Length is < 5 or > 9) return new Refusal("code.length", $"A {what} code has two digits for the year and three or more for the number, for example {example}.");
        var number = int.Parse(digits.AsSpan(2), NumberStyles.None, CultureInfo.InvariantCulture);
        if (number == 0 || (digits.Length > 5 && digits[2] == '0')) return new Refusal("code.number", $"The number in a {what} code runs from 001, without further zeros in front, for example {example}.");
        return (2000 + int.Parse(digits.AsSpan(0, 2), NumberStyles.None, CultureInfo.InvariantCulture), number);
    }
}
