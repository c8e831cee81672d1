using System.Text.Json;

namespace LibraryDesk.Identification.Guides;

/// <summary>Reads the members of one JSON object and notes what is missing, of the wrong kind, or unknown.</summary>
internal sealed class JsonFields
{
    private readonly JsonLine _node;
    private readonly string _what;
    private readonly List<GuideFault> _faults;
    private readonly HashSet<string> _known = [];

    private JsonFields(JsonLine node, string what, List<GuideFault> faults)
    {
        _node = node;
        _what = what;
        _faults = faults;
    }

    public int Line => _node.Line;

    /// <summary>Trait to name in faults; set once it is known.</summary>
    public string? Trait { get; set; }

    public static JsonFields? Of(JsonLine? node, string what, List<GuideFault> faults)
    {
        if (node is { Kind: JsonValueKind.Object }) return new JsonFields(node, what, faults);
        faults.Add(new GuideFault(node?.Line ?? 1, null, $"{what} must be an object in braces"));
        return null;
    }

    public string Text(string name)
    {
        var value = Take(name);
        if (value is { Kind: JsonValueKind.String, Text: { } text } && text.Trim().Length > 0) return text;
        Fault(value, value is null ? $"{_what} has no \"{name}\"" : $"\"{name}\" must be a text that is not empty");
        return "";
    }

    public string? TextOrNull(string name)
    {
        var value = Take(name);
        if (value is null or { Kind: JsonValueKind.Null }) return null;
        if (value.Kind == JsonValueKind.String) return value.Text;
        Fault(value, $"\"{name}\" must be a text");
        return null;
    }

    public double? NumberOrNull(string name)
    {
        var value = Take(name);
        if (value is null or { Kind: JsonValueKind.Null }) return null;
        if (value.Kind == JsonValueKind.Number && double.IsFinite(value.Number)) return value.Number;
        Fault(value, $"\"{name}\" must be a number");
        return null;
    }

    public double Number(string name)
    {
        if (_node.Member(name) is { Kind: not JsonValueKind.Null }) return NumberOrNull(name) ?? double.NaN;
        Take(name);
        Fault(null, $"{_what} has no \"{name}\"");
        return double.NaN;
    }

    public bool Flag(string name, bool otherwise)
    {
        var value = Take(name);
        if (value is null or { Kind: JsonValueKind.Null }) return otherwise;
        if (value.Kind is JsonValueKind.True or JsonValueKind.False) return value.Kind == JsonValueKind.True;
        Fault(value, $"\"{name}\" must be true or false");
        return otherwise;
    }

    public T? Choice<T>(string name, IReadOnlyDictionary<string, T> choices)
        where T : struct
    {
        var text = TextOrNull(name);
        if (text is null) return null;
        if (choices.TryGetValue(text, out var choice)) return choice;
        Fault(_node.Member(name), $"\"{name}\" is \"{text}\"; it must be one of: {string.Join(", ", choices.Keys)}");
        return null;
    }

    public List<string> Texts(string name)
    {
        var texts = new List<string>();
        foreach (var item in Items(name, required: false))
        {
            if (item is { Kind: JsonValueKind.String, Text: { Length: > 0 } text }) texts.Add(text);
            else Fault(item, $"\"{name}\" must hold texts");
        }

        return texts;
    }

    public JsonFields? Part(string name)
    {
        var value = Take(name);
        return value is null or { Kind: JsonValueKind.Null } ? null : Of(value, $"\"{name}\"", _faults);
    }

    public List<JsonLine> Items(string name, bool required)
    {
        var value = Take(name);
        if (value is null or { Kind: JsonValueKind.Null })
        {
            if (required) Fault(null, $"{_what} has no \"{name}\"");
            return [];
        }

        if (value.Kind == JsonValueKind.Array) return value.Items;
        Fault(value, $"\"{name}\" must be a list in brackets");
        return [];
    }

    /// <summary>Notes every member that nobody asked for: usually a slip of the pen that would be lost in silence.</summary>
    public void Close()
    {
        foreach (var (name, value) in _node.Members)
        {
            if (!_known.Contains(name)) Fault(value, $"{_what} has an unknown entry \"{name}\"");
        }
    }

    public void Fault(JsonLine? at, string reason) => _faults.Add(new GuideFault(at?.Line ?? Line, Trait, $"{reason}"));

    private JsonLine? Take(string name)
    {
        _known.Add(name);
        return _node.Member(name);
    }
}
