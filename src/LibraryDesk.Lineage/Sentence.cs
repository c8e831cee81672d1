using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace LibraryDesk.Lineage;

/// <summary>
/// A whole sentence with its values still apart from its words, so that another language can put them in its own order. Made by writing an
/// interpolated string where a sentence is asked for: <c>$"Lot {code} has {seeds} seeds"</c> has the pattern <c>Lot {0} has {1} seeds</c>.
/// </summary>
[InterpolatedStringHandler]
public sealed class Sentence : IEquatable<Sentence>
{
    private readonly StringBuilder _pattern;
    private readonly List<object?> _values;

    /// <summary>Called by the compiler.</summary>
    /// <param name="literalLength">Characters of plain text.</param>
    /// <param name="formattedCount">Number of values.</param>
    public Sentence(int literalLength, int formattedCount)
    {
        _pattern = new StringBuilder(literalLength + (3 * formattedCount));
        _values = new List<object?>(formattedCount);
    }

    /// <summary>A sentence, or a few words that stand as a value in another one.</summary>
    public static Sentence Of(Sentence sentence) => sentence;

    /// <summary>A sentence without values.</summary>
    public static Sentence Plain(string words)
    {
        var sentence = new Sentence(0, 0);
        sentence.AppendLiteral(words);
        return sentence;
    }

    /// <summary>A sentence of a project that does not know this one.</summary>
    public static Sentence From(FormattableString words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var sentence = new Sentence(0, 0);
        sentence._pattern.Append(words.Format);
        sentence._values.AddRange(words.GetArguments().Select(value => value is FormattableString inner ? From(inner) : value));
        return sentence;
    }

    /// <summary>The English words with <c>{0}</c>, <c>{1}</c> in the places of the values; a composite format string.</summary>
    public string Pattern => _pattern.ToString();

    /// <summary>The values, in the order of the English sentence.</summary>
    public IReadOnlyList<object?> Values => _values;

    /// <summary>Called by the compiler.</summary>
    public void AppendLiteral(string value) =>
        _pattern.Append((value ?? "").Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal));

    /// <summary>Called by the compiler.</summary>
    public void AppendFormatted<T>(T value, string? format = null)
    {
        _pattern.Append('{').Append(CultureInfo.InvariantCulture, $"{_values.Count}");
        if (format is not null) _pattern.Append(':').Append(format);
        _pattern.Append('}');
        _values.Add(value);
    }

    /// <summary>The sentence by a pattern of the same values, such as its translation.</summary>
    /// <param name="pattern">Such as its translation.</param>
    /// <param name="provider">How numbers and dates are written.</param>
    /// <param name="words">Says the values that are words themselves; null for English.</param>
    /// <exception cref="FormatException">The pattern asks for a value that the sentence does not have.</exception>
    public string By(string pattern, IFormatProvider provider, Func<Sentence, string>? words = null) =>
        string.Format(provider, pattern, [.. _values.Select(value => value is Sentence inner && words is not null ? words(inner) : value)]);

    /// <summary>The English sentence, numbers as the invariant culture writes them.</summary>
    public override string ToString() => By(Pattern, CultureInfo.InvariantCulture);

    /// <inheritdoc />
    public bool Equals(Sentence? other) => other is not null && ToString() == other.ToString();

    /// <inheritdoc />
    public override bool Equals(object? obj) => Equals(obj as Sentence);

    /// <inheritdoc />
    public override int GetHashCode() => string.GetHashCode(ToString(), StringComparison.Ordinal);
}
