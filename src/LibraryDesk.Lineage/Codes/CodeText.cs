namespace LibraryDesk.Lineage.Codes;

/// <summary>What a person typed, made plain: upper case, without spaces and hyphens, and with O, I and L read as the digits they stand for.</summary>
internal static class CodeText
{
    /// <summary>Letters and digits only, upper case. Anything but letters, digits, spaces and dashes is kept, and fails later.</summary>
    public static string Plain(string? typed)
    {
        if (string.IsNullOrWhiteSpace(typed)) return "";
        Span<char> kept = stackalloc char[Math.Min(typed.Length, 64)];
        var length = 0;
        foreach (var character in typed)
        {
            if (char.IsWhiteSpace(character) || character is '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014') continue;
            if (length == kept.Length) break;
            kept[length++] = char.ToUpperInvariant(character);
        }

        return new string(kept[..length]);
    }

    /// <summary>The digits of a code; the letters that codes never use are read as the digits they look like. Null when another character stands there.</summary>
    public static string? Digits(ReadOnlySpan<char> characters)
    {
        var digits = new char[characters.Length];
        for (var place = 0; place < characters.Length; place++)
        {
            var character = characters[place] switch { 'O' => '0', 'I' or 'L' => '1', var other => other };
            if (!char.IsAsciiDigit(character)) return null;
            digits[place] = character;
        }

        return new string(digits);
    }
}
