using System.Globalization;
using System.Text;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>Words as the search keeps and compares them. One way of doing it for both databases, so that both give the same results.</summary>
public static class SearchText
{
    /// <summary>The longest word kept; longer ones are cut.</summary>
    public const int Longest = 40;

    /// <summary>The words of a text: lower case, without accents and apostrophes, cut at everything that is no letter or digit; each once, in order.</summary>
    public static IReadOnlyList<string> Words(string? text)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        foreach (var character in Plain(text ?? ""))
        {
            if (char.IsLetterOrDigit(character)) word.Append(character);
            else Take(words, word);
        }

        Take(words, word);
        return words;
    }

    /// <summary>Three letters in a row of a word, with two blanks before and one after, each once: "red" gives "  r", " re", "red", "ed ".</summary>
    public static IReadOnlyList<string> Trigrams(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        var padded = "  " + word + " ";
        return [.. Enumerable.Range(0, padded.Length - 2).Select(at => padded.Substring(at, 3)).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>How many slips lie between two words: a letter more, less, other, or two neighbours swapped (optimal string alignment; Damerau 1964 named these four). Stops counting above the most asked for.</summary>
    public static int Slips(string one, string other, int most)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        if (Math.Abs(one.Length - other.Length) > most) return most + 1;
        var before = new int[other.Length + 1];
        var last = new int[other.Length + 1];
        var now = new int[other.Length + 1];
        for (var j = 0; j <= other.Length; j++) last[j] = j;
        for (var i = 1; i <= one.Length; i++)
        {
            now[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                now[j] = Math.Min(Math.Min(now[j - 1], last[j]) + 1, last[j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1]) now[j] = Math.Min(now[j], before[j - 2] + 1);
            }

            (before, last, now) = (last, now, before);
        }

        return last[other.Length];
    }

    /// <summary>How many slips are forgiven in a word: none below four letters, one up to six, two above.</summary>
    public static int Forgiven(string word)
    {
        ArgumentNullException.ThrowIfNull(word);
        return word.Length switch { < 4 => 0, <= 6 => 1, _ => 2 };
    }

    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var character in text.Normalize(NormalizationForm.FormKD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(character) == UnicodeCategory.NonSpacingMark || character is '\'' or '’' or '‘') continue;
            _ = char.ToLowerInvariant(character) switch
            {
                'ß' => plain.Append("ss"),
                'æ' => plain.Append("ae"),
                'œ' => plain.Append("oe"),
                'ø' => plain.Append('o'),
                'ł' => plain.Append('l'),
                'đ' => plain.Append('d'),
                var lower => plain.Append(lower),
            };
        }

        return plain.ToString();
    }

    private static void Take(List<string> words, StringBuilder word)
    {
        if (word.Length == 0) return;
        var text = word.ToString(0, Math.Min(word.Length, Longest));
        if (!words.Contains(text)) words.Add(text);
        word.Clear();
    }
}
