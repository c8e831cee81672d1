using System.Buffers;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>
/// Reads along a text and says whether it surely is canonical JSON of the plain sort that acts are: whole numbers, names in order, no
/// escapes but the two commonest. Anything else is left to <see cref="CanonicalJson"/>. A walk along a million entries has no time to build trees.
/// </summary>
internal ref struct CanonicalScan(ReadOnlySpan<char> text)
{
    private const int MostDeep = 32;

    // What ends a text, escapes, or asks for a closer look: control characters and halves of surrogate pairs.
    private static readonly SearchValues<char> _notPlain = SearchValues.Create(
        [.. Enumerable.Range(0, 32).Select(code => (char)code), '"', '\\', .. Enumerable.Range(0xd800, 0x800).Select(code => (char)code)]);

    private readonly ReadOnlySpan<char> _text = text;
    private int _at;

    /// <summary>True: canonical. False: not plain enough to say.</summary>
    public static bool IsSurelyCanonical(string json)
    {
        var scan = new CanonicalScan(json);
        return scan.Value(0) && scan._at == json.Length;
    }

    private bool Value(int depth)
    {
        if (depth > MostDeep || _at >= _text.Length) return false;
        switch (_text[_at])
        {
            case '{': return Object(depth);
            case '[': return Array(depth);
            case '"': return Text(out _);
            case 't': return Word("true");
            case 'f': return Word("false");
            case 'n': return Word("null");
            default: return Whole();
        }
    }

    private bool Object(int depth)
    {
        _at++;
        if (Take('}')) return true;
        ReadOnlySpan<char> before = default;
        for (var first = true; ; first = false)
        {
            if (!Text(out var name) || name.Contains('\\')) return false;
            if (!first && before.SequenceCompareTo(name) >= 0) return false;
            before = name;
            if (!Take(':') || !Value(depth + 1)) return false;
            if (Take('}')) return true;
            if (!Take(',')) return false;
        }
    }

    private bool Array(int depth)
    {
        _at++;
        if (Take(']')) return true;
        while (Value(depth + 1))
        {
            if (Take(']')) return true;
            if (!Take(',')) return false;
        }

        return false;
    }

    private bool Text(out ReadOnlySpan<char> inside)
    {
        inside = default;
        if (!Take('"')) return false;
        var start = _at;
        while (true)
        {
            // Most of a text is letters: they are stepped over many at a time.
            var plain = _text[_at..].IndexOfAny(_notPlain);
            if (plain < 0) return false;
            _at += plain;
            if (_text[_at] == '"')
            {
                inside = _text[start.._at];
                _at++;
                return true;
            }

            if (_text[_at] != '\\') return false;
            _at++;
            if (_at >= _text.Length || _text[_at] is not ('"' or '\\')) return false;
            _at++;
        }
    }

    // At most 15 digits: every such number is a double's exact value, printed as it stands.
    private bool Whole()
    {
        var start = _at;
        if (_text[_at] == '-') _at++;
        var digits = _at;
        while (_at < _text.Length && char.IsAsciiDigit(_text[_at])) _at++;
        var length = _at - digits;
        if (length is 0 or > 15) return false;
        if (_text[digits] == '0' && (length > 1 || digits > start)) return false;
        return _at >= _text.Length || _text[_at] is not ('.' or 'e' or 'E');
    }

    private bool Word(string word)
    {
        if (!_text[_at..].StartsWith(word, StringComparison.Ordinal)) return false;
        _at += word.Length;
        return true;
    }

    private bool Take(char character)
    {
        if (_at >= _text.Length || _text[_at] != character) return false;
        _at++;
        return true;
    }
}
