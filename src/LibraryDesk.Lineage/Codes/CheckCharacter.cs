namespace LibraryDesk.Lineage.Codes;

/// <summary>
/// The last letter of a packet code. The 23 letters without I, L and O stand for 0 to 22, a digit for itself; the sum of
/// value times weight over all places is 0 modulo 23, with weights 5, 5^2, 5^3 ... (5 generates the non-zero remainders of 23).
/// 23 is prime and no weight is 0, so one wrong character moves the sum. Neighbouring weights differ, so do two different digits or
/// letters modulo 23, so a swap of two neighbours moves the sum too. A swap or slip between a letter and a digit breaks the code's
/// shape. Theory of weighted checks to a prime modulus: ISO/IEC 7064 (the family of pure systems, cited from memory).
/// </summary>
public static class CheckCharacter
{
    /// <summary>The letters codes are made of: I, L and O are left out because they read as 1 and 0.</summary>
    public const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ";

    private const int Modulus = 23;
    private const int Generator = 5;

    /// <summary>The letter that completes a code.</summary>
    /// <param name="body">The code's characters without hyphens: digits and <see cref="Letters"/>; at most 21 long, where the weights begin to repeat.</param>
    public static char For(ReadOnlySpan<char> body)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(body.Length, Modulus - 2);
        var sum = 0;
        var weight = 1;
        foreach (var character in body)
        {
            weight = weight * Generator % Modulus;
            sum = (sum + (weight * ValueOf(character))) % Modulus;
        }

        // The check stands in the next place: find the letter that brings the whole sum to 0.
        weight = weight * Generator % Modulus;
        for (var letter = 0; letter < Modulus; letter++)
        {
            if ((sum + (weight * letter)) % Modulus == 0) return Letters[letter];
        }

        throw new InvalidOperationException("A non-zero weight modulo a prime always has an answer.");
    }

    private static int ValueOf(char character)
    {
        if (char.IsAsciiDigit(character)) return character - '0';
        var letter = Letters.IndexOf(character, StringComparison.Ordinal);
        return letter >= 0 ? letter : throw new ArgumentOutOfRangeException(nameof(character), character, "Not a character of a code.");
    }
}
