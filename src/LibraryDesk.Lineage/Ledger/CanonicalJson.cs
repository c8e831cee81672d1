using System.Globalization;
using System.Text;
using System.Text.Json;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>
/// Writes JSON in the one form that RFC 8785 (JSON Canonicalization Scheme, 2020) allows: no spaces, members sorted by the UTF-16 code
/// units of their names, strings with the fewest escapes, numbers as ECMAScript prints them.
/// </summary>
public static class CanonicalJson
{
    /// <summary>The canonical text of a JSON text.</summary>
    /// <exception cref="JsonException">Not JSON, a name twice in one object, a number out of range, or half a surrogate pair: RFC 8785 builds on RFC 7493, which bars these.</exception>
    public static string Write(string json)
    {
        using var document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
        return Write(document.RootElement);
    }

    /// <summary>The canonical text of a JSON value.</summary>
    /// <exception cref="JsonException">See <see cref="Write(string)"/>.</exception>
    public static string Write(JsonElement value)
    {
        var text = new StringBuilder();
        Append(text, value);
        return text.ToString();
    }

    /// <summary>A number as ECMAScript's Number::toString prints it (ECMA-262, section 6.1.6.1.20 in recent editions; RFC 8785, 3.2.2.3).</summary>
    /// <exception cref="JsonException">Not a finite number.</exception>
    public static string Number(double value)
    {
        if (!double.IsFinite(value)) throw new JsonException("JSON has no infinities and no not-a-number.");
        if (value == 0) return "0";

        // .NET prints the shortest digits that read back as the same double, which is ECMAScript's choice of digits; only the layout differs.
        var shortest = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture);
        var digits = Digits(shortest);
        var point = PointBefore(shortest);
        var text = new StringBuilder(value < 0 ? "-" : "");
        if (digits.Length <= point && point <= 21)
        {
            return text.Append(digits).Append('0', point - digits.Length).ToString();
        }

        if (point is > 0 and <= 21) return text.Append(digits.AsSpan(0, point)).Append('.').Append(digits.AsSpan(point)).ToString();
        if (point is > -6 and <= 0) return text.Append("0.").Append('0', -point).Append(digits).ToString();
        text.Append(digits[0]);
        if (digits.Length > 1) text.Append('.').Append(digits.AsSpan(1));
        return text.Append('e').Append(point > 0 ? '+' : '-').Append(Math.Abs(point - 1).ToString(CultureInfo.InvariantCulture)).ToString();
    }

    /// <summary>A string in quotes, with the fewest escapes (RFC 8785, 3.2.2.2).</summary>
    /// <exception cref="JsonException">Half a surrogate pair.</exception>
    public static string Text(string value)
    {
        ArgumentNullException.ThrowIfNull(value);
        var text = new StringBuilder(value.Length + 2);
        AppendText(text, value);
        return text.ToString();
    }

    private static void Append(StringBuilder text, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                AppendObject(text, value);
                break;
            case JsonValueKind.Array:
                text.Append('[');
                var first = true;
                foreach (var item in value.EnumerateArray())
                {
                    if (!first) text.Append(',');
                    first = false;
                    Append(text, item);
                }

                text.Append(']');
                break;
            case JsonValueKind.String:
                AppendText(text, value.GetString()!);
                break;
            case JsonValueKind.Number:
                text.Append(Number(value.GetDouble()));
                break;
            case JsonValueKind.True:
                text.Append("true");
                break;
            case JsonValueKind.False:
                text.Append("false");
                break;
            default:
                text.Append("null");
                break;
        }
    }

    private static void AppendObject(StringBuilder text, JsonElement value)
    {
        var members = value.EnumerateObject().ToArray();
        Array.Sort(members, (left, right) => string.CompareOrdinal(left.Name, right.Name));
        text.Append('{');
        for (var place = 0; place < members.Length; place++)
        {
            if (place > 0)
            {
                if (members[place].Name == members[place - 1].Name) throw new JsonException($"The name {members[place].Name} stands twice in one object.");
                text.Append(',');
            }

            AppendText(text, members[place].Name);
            text.Append(':');
            Append(text, members[place].Value);
        }

        text.Append('}');
    }

    private static void AppendText(StringBuilder text, string value)
    {
        text.Append('"');
        for (var place = 0; place < value.Length; place++)
        {
            var character = value[place];
            switch (character)
            {
                case '"': text.Append("\\\""); break;
                case '\\': text.Append("\\\\"); break;
                case '\b': text.Append("\\b"); break;
                case '\t': text.Append("\\t"); break;
                case '\n': text.Append("\\n"); break;
                case '\f': text.Append("\\f"); break;
                case '\r': text.Append("\\r"); break;
                case < ' ': text.Append("\\u00").Append(((int)character).ToString("x2", CultureInfo.InvariantCulture)); break;
                default:
                    if (char.IsSurrogate(character))
                    {
                        if (place + 1 >= value.Length || !char.IsSurrogatePair(character, value[place + 1])) throw new JsonException("Half a surrogate pair is not text.");
                        text.Append(character);
                        character = value[++place];
                    }

                    text.Append(character);
                    break;
            }
        }

        text.Append('"');
    }

    private static string Digits(string shortest)
    {
        var end = shortest.IndexOf('E', StringComparison.Ordinal);
        var mantissa = end < 0 ? shortest : shortest[..end];
        var digits = mantissa.Replace(".", "", StringComparison.Ordinal).TrimStart('0').TrimEnd('0');
        return digits;
    }

    // Where the decimal point stands, counted from before the first digit: 0.001 is -2, 1 is 1, 123.4 is 3.
    private static int PointBefore(string shortest)
    {
        var e = shortest.IndexOf('E', StringComparison.Ordinal);
        var exponent = e < 0 ? 0 : int.Parse(shortest.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var mantissa = e < 0 ? shortest : shortest[..e];
        var dot = mantissa.IndexOf('.', StringComparison.Ordinal);
        var whole = dot < 0 ? mantissa.Length : dot;
        var firstDigit = mantissa.AsSpan().IndexOfAnyExcept('0', '.');
        return firstDigit < whole ? whole - firstDigit + exponent : whole - firstDigit + 1 + exponent;
    }
}
