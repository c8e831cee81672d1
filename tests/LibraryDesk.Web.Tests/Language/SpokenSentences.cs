using System.Text;

namespace LibraryDesk.Web.Tests.Language;

/// <summary>Finds the English sentences that sources hand to a word book: the literals inside <c>Say[…]</c>, <c>Say.Linked(…)</c>, <c>Say.Count(…)</c>.</summary>
internal static class SpokenSentences
{
    private static readonly string[] Openings = ["Say[", "Say.Linked(", "Say.Count("];

    /// <summary>The patterns, with <c>{0}</c> for the first value of an interpolated string, as the compiler makes them.</summary>
    public static IEnumerable<string> In(string source)
    {
        foreach (var opening in Openings)
        {
            for (var at = source.IndexOf(opening, StringComparison.Ordinal); at >= 0; at = source.IndexOf(opening, at + 1, StringComparison.Ordinal))
            {
                if (at > 0 && (char.IsLetterOrDigit(source[at - 1]) || source[at - 1] == '.')) continue;
                foreach (var sentence in Literals(source, at + opening.Length)) yield return sentence;
            }
        }
    }

    /// <summary>The literals up to the bracket that closes the call; those inside the holes of another literal are not sentences.</summary>
    public static IEnumerable<string> Literals(string source, int at)
    {
        for (var depth = 1; depth > 0 && at < source.Length;)
        {
            var c = source[at];
            if (c is '[' or '(' or '{') depth++;
            if (c is ']' or ')' or '}') depth--;
            if (c == '\'')
            {
                at += source[at + 1] == '\\' ? 4 : 3;
            }
            else if (c == '"')
            {
                var found = new StringBuilder();
                at = Literal(source, at + 1, source[at - 1] == '$', found);
                yield return found.ToString();
            }
            else
            {
                at++;
            }
        }
    }

    private static int Literal(string source, int at, bool interpolated, StringBuilder found)
    {
        var values = 0;
        while (source[at] != '"')
        {
            if (source[at] == '\\')
            {
                at = Escape(source, at + 1, found);
            }
            else if (interpolated && source[at] == '{' && source[at + 1] != '{')
            {
                var (end, format) = Hole(source, at + 1);
                found.Append('{').Append(values++).Append(format).Append('}');
                at = end;
            }
            else if (interpolated && source[at] is '{' or '}')
            {
                found.Append(source[at], 2);
                at += 2;
            }
            else
            {
                found.Append(source[at++]);
            }
        }
        return at + 1;
    }

    private static int Escape(string source, int at, StringBuilder found)
    {
        if (source[at] == 'u')
        {
            found.Append((char)Convert.ToInt32(source.Substring(at + 1, 4), 16));
            return at + 5;
        }
        found.Append(source[at] switch { 'n' => '\n', 't' => '\t', var other => other });
        return at + 1;
    }

    // The end of an interpolation hole, and its format with the colon, if it has one.
    private static (int End, string Format) Hole(string source, int at)
    {
        var depth = 0;
        var format = -1;
        for (; ; at++)
        {
            var c = source[at];
            if (c == '"') at = Literal(source, at + 1, source[at - 1] == '$', new StringBuilder()) - 1;
            else if (c is '(' or '[' or '{') depth++;
            else if (c is ')' or ']' || (c == '}' && depth > 0)) depth--;
            else if (c == ':' && depth == 0 && format < 0) format = at;
            else if (c == '}') return (at + 1, format < 0 ? "" : source[format..at]);
        }
    }
}
