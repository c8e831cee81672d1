using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace LibraryDesk.Lineage.Codes;

/// <summary>The code of a packet as people read it, such as Q26-0418-N: the library's letter, the year, a running number, and a check letter.</summary>
[JsonConverter(typeof(CodeConverter<PacketCode>))]
public readonly record struct PacketCode : ICode<PacketCode>
{
    private readonly char _library;

    /// <param name="library">The library's letter, one of <see cref="CheckCharacter.Letters"/>.</param>
    /// <param name="year">2000 to 2099.</param>
    /// <param name="number">1 or more, running within the year.</param>
    public PacketCode(char library, int year, int number)
    {
        if (!CheckCharacter.Letters.Contains(library, StringComparison.Ordinal)) throw new ArgumentOutOfRangeException(nameof(library), library, "A library letter is A to Z without I, L and O.");
        RunningCode.Check(year, number);
        _library = library;
        Year = year;
        Number = number;
    }

    /// <summary>The most characters a written code has.</summary>
    public const int Length = 13;

    /// <summary>The library's letter.</summary>
    public char Library => _library == default ? 'A' : _library;

    /// <summary>The year, 2000 to 2099.</summary>
    public int Year { get; }

    /// <summary>The running number within the year.</summary>
    public int Number { get; }

    /// <summary>The check letter.</summary>
    public char Check => CheckCharacter.For(Body);

    private string Body => string.Create(CultureInfo.InvariantCulture, $"{Library}{Year % 100:00}{Number:0000}");

    /// <summary>
    /// Reads what a person typed or a scanner read. Lower case, spaces, missing hyphens, and O, I, L for the digits they look like are
    /// forgiven. Any single wrong character and any swap of neighbours is refused.
    /// </summary>
    public static Outcome<PacketCode> Read(string? typed)
    {
        var plain = CodeText.Plain(typed);
        if (plain.Length == 0) return new Refusal("code.empty", $"Type the packet code, for example Q26-0418-N.");
        if (plain.Length is < 8 or > 11) return new Refusal("code.length", $"A packet code has a letter, two digits for the year, four or more for the number and a check letter, for example Q26-0418-N.");
        if (!CheckCharacter.Letters.Contains(plain[0], StringComparison.Ordinal)) return new Refusal("code.library", $"A packet code begins with the library's letter, for example Q26-0418-N. {plain[0]} is not one.");
        if (!CheckCharacter.Letters.Contains(plain[^1], StringComparison.Ordinal)) return new Refusal("code.check-missing", $"A packet code ends with its check letter, for example Q26-0418-N. {plain[^1]} is not one.");
        if (CodeText.Digits(plain.AsSpan(1, plain.Length - 2)) is not { } digits) return new Refusal("code.shape", $"Between the first and the last letter of a packet code stand digits only, for example Q26-0418-N.");
        var number = int.Parse(digits.AsSpan(2), NumberStyles.None, CultureInfo.InvariantCulture);
        if (number == 0 || (digits.Length > 6 && digits[2] == '0')) return new Refusal("code.number", $"The number in a packet code runs from 0001, without further zeros in front, for example Q26-0418-N.");
        var code = new PacketCode(plain[0], 2000 + int.Parse(digits.AsSpan(0, 2), NumberStyles.None, CultureInfo.InvariantCulture), number);
        return code.Check == plain[^1] ? code : new Refusal("code.check", $"The check letter does not fit: one character of {typed!.Trim()} is wrong, or two have changed places. Look at the label again.");
    }

    /// <summary>Reads a code, as <see cref="Read"/> does.</summary>
    public static bool TryParse([NotNullWhen(true)] string? typed, out PacketCode code, [NotNullWhen(false)] out Refusal? refusal) =>
        Read(typed).TryGet(out code, out refusal);

    /// <summary>As printed: Q26-0418 and the check letter.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Library}{Year % 100:00}-{Number:0000}-{Check}");
}
