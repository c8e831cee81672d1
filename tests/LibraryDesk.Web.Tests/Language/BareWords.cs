using System.Text.RegularExpressions;

namespace LibraryDesk.Web.Tests.Language;

/// <summary>
/// Finds English that a razor file shows without asking a word book: text between tags, attributes that are read, and literals inside the
/// expressions that stand in either. Reads the markup only; the code block at the end is not looked at.
/// </summary>
internal sealed partial class BareWords
{
    private static readonly HashSet<string> ReadAttributes = new(StringComparer.Ordinal)
    {
        "Label", "Hint", "Heading", "Text", "Title", "Legend", "Note", "Unit", "Message", "Words", "Empty", "Kind", "Error", "UndoLabel",
        "aria-label", "aria-description", "alt", "placeholder", "title", "data-l",
    };

    private static readonly HashSet<string> WithoutEnd = new(StringComparer.Ordinal) { "br", "hr", "img", "input", "link", "meta", "wbr", "source", "col" };

    private readonly string _source;
    private readonly List<string> _found = [];
    private int _at;

    private BareWords(string source) => _source = source;

    /// <summary>The words found, in the order they stand.</summary>
    public static IReadOnlyList<string> In(string razor)
    {
        var markup = Comment().Replace(razor, "");
        var code = CodeBlock().Match(markup);
        if (code.Success) markup = markup[..code.Index];
        var reader = new BareWords(Directive().Replace(markup, ""));
        reader.Markup();
        return reader._found;
    }

    private char Now => _at < _source.Length ? _source[_at] : '\0';

    private bool Sees(string text) => string.CompareOrdinal(_source, _at, text, 0, text.Length) == 0;

    // Content up to an end tag, or up to the end of the line where a line of text stands in code.
    private void Markup(bool line = false)
    {
        var from = _at;
        while (_at < _source.Length && !Sees("</") && !(line && Now == '\n'))
        {
            if (Now == '<' && (char.IsLetter(_source[_at + 1])))
            {
                Keep(_source[from.._at]);
                Element();
                from = _at;
            }
            else if (Now == '@' && !Sees("@@"))
            {
                Keep(_source[from.._at]);
                _at++;
                Transition(read: true);
                from = _at;
            }
            else
            {
                _at++;
            }
        }
        Keep(_source[from.._at]);
    }

    private void Element()
    {
        _at++;
        var name = Name();
        while (_at < _source.Length && Now != '>' && !Sees("/>"))
        {
            if (char.IsLetter(Now) || Now == '@') Attribute(name);
            else _at++;
        }
        var closed = Now == '/';
        _at += closed ? 2 : 1;
        if (closed || WithoutEnd.Contains(name)) return;
        Markup();
        _at = _source.IndexOf('>', _at) is var end and >= 0 ? end + 1 : _source.Length;
    }

    private void Attribute(string element)
    {
        var name = Name();
        if (Now != '=') return;
        _at++;
        var read = ReadAttributes.Contains(name) && !(name == "Kind" && element is "Chip" or "Note");
        if (Now != '"')
        {
            while (_at < _source.Length && !char.IsWhiteSpace(Now) && Now != '>') _at++;
            return;
        }
        var from = ++_at;
        while (_at < _source.Length && Now != '"')
        {
            if (Now != '@')
            {
                _at++;
                continue;
            }
            if (read) Keep(_source[from.._at]);
            _at++;
            Transition(read);
            from = _at;
        }
        // A parameter may be a C# expression: the name of a variable, or of a member of something.
        if (read && (name == "Unit" || !char.IsUpper(name[0]) || !Expression().IsMatch(_source[from.._at]))) Keep(_source[from.._at]);
        _at++;
    }

    // What follows an @: a statement with blocks, a bracketed expression, or a member.
    private void Transition(bool read)
    {
        var word = Word().Match(_source, _at).Value;
        if (word is "if" or "foreach" or "for" or "while" or "switch" or "using" or "lock")
        {
            _at += word.Length;
            Blank();
            Balanced(read: false);
            Blocks();
            return;
        }
        if (Now == '{')
        {
            Code();
            return;
        }
        if (Now == '(')
        {
            Balanced(read);
            return;
        }
        _at += word.Length;
        var speaks = word == "Say";
        while (Now is '(' or '[' || (Now is '.' or '?' or '!' && Member().IsMatch(_source, _at)))
        {
            if (Now is '(' or '[') Balanced(read && !speaks);
            else _at += Member().Match(_source, _at).Length;
        }
    }

    // The block after a condition, and those of else.
    private void Blocks()
    {
        Blank();
        if (Now != '{') return;
        Code();
        var next = Else().Match(_source, _at);
        if (!next.Success) return;
        _at += next.Length;
        if (Now == '(') Balanced(read: false);
        Blocks();
    }

    // C# between braces, with markup where a statement could begin.
    private void Code()
    {
        _at++;
        var begins = true;
        while (_at < _source.Length && Now != '}')
        {
            if (char.IsWhiteSpace(Now)) _at++;
            else if (begins && Now == '<') Element();
            else if (begins && Sees("@:")) Markup(line: true);
            else if (Now == '@' && _source[_at + 1] != '<')
            {
                _at++;
                Transition(read: true);
            }
            else if (Now == '"') Literal(read: false);
            else if (Now == '{') Code();
            else if (Now == '(') Balanced(read: false);
            else
            {
                begins = Now is ';' or ':';
                _at++;
                continue;
            }
            if (_source[_at - 1] is '>' or '}' or ')') begins = true;
        }
        _at++;
    }

    // A bracketed part of C#; its literals are words where what it makes is read and no word book is asked.
    private void Balanced(bool read)
    {
        var depth = 0;
        do
        {
            if (Now == '"')
            {
                Literal(read);
                continue;
            }
            if (Sees("Say[") || Sees("Say.Linked(") || Sees("Say.Count("))
            {
                _at = _source.IndexOfAny(['[', '('], _at);
                Balanced(read: false);
                continue;
            }
            if (Now == '\'') _at += _source[_at + 1] == '\\' ? 3 : 2;
            else if (Now is '(' or '[' or '{') depth++;
            else if (Now is ')' or ']' or '}') depth--;
            _at++;
        }
        while (depth > 0 && _at < _source.Length);
    }

    private void Literal(bool read)
    {
        var interpolated = _source[_at - 1] == '$';
        // The first argument of a call is a format, a key or the like; what is compared with is not shown.
        var argument = FirstOfACall().IsMatch(_source[Math.Max(0, _at - 3).._at]);
        var from = ++_at;
        while (_at < _source.Length && Now != '"')
        {
            if (Now == '\\') _at += 2;
            else if (interpolated && Now == '{')
            {
                if (read) Keep(_source[from.._at]);
                Balanced(read);
                from = _at;
            }
            else _at++;
        }
        if (read && !argument) Keep(_source[from.._at]);
        _at++;
    }

    private void Keep(string text)
    {
        var words = Entity().Replace(text, " ").Trim();
        if (Letters().IsMatch(words)) _found.Add(Blanks().Replace(words, " "));
    }

    private string Name()
    {
        var name = TagName().Match(_source, _at).Value;
        _at += Math.Max(1, name.Length);
        return name;
    }

    private void Blank()
    {
        while (char.IsWhiteSpace(Now)) _at++;
    }

    [GeneratedRegex(@"@\*.*?\*@", RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"^@code\b", RegexOptions.Multiline)]
    private static partial Regex CodeBlock();

    [GeneratedRegex(@"^@(page|using|inject|attribute|layout|inherits|implements|rendermode|namespace|typeparam)\b.*$", RegexOptions.Multiline)]
    private static partial Regex Directive();

    [GeneratedRegex(@"\G\w+")]
    private static partial Regex Word();

    [GeneratedRegex(@"\G[?!]?\.\w+|\G!")]
    private static partial Regex Member();

    [GeneratedRegex(@"\G\s*else\s*(if\s*)?")]
    private static partial Regex Else();

    [GeneratedRegex(@"\G@?[\w.:-]+")]
    private static partial Regex TagName();

    [GeneratedRegex(@"^([_a-z][\w.\[\]]*|\w+\.[\w.]+)$")]
    private static partial Regex Expression();

    [GeneratedRegex(@"\w\($|[!=]=\s$")]
    private static partial Regex FirstOfACall();

    [GeneratedRegex(@"&\w+;|&#\w+;|<![^>]*>")]
    private static partial Regex Entity();

    [GeneratedRegex(@"\p{L}")]
    private static partial Regex Letters();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
