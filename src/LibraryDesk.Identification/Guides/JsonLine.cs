using System.Text.Json;

namespace LibraryDesk.Identification.Guides;

/// <summary>A JSON value that knows the line it starts on.</summary>
internal sealed class JsonLine
{
    private JsonLine(JsonValueKind kind, int line)
    {
        Kind = kind;
        Line = line;
    }

    public JsonValueKind Kind { get; }

    public int Line { get; }

    public string? Text { get; private init; }

    public double Number { get; private init; }

    public List<JsonLine> Items { get; } = [];

    public List<KeyValuePair<string, JsonLine>> Members { get; } = [];

    public static JsonLine? Parse(ReadOnlySpan<byte> utf8, List<GuideFault> faults)
    {
        if (utf8.StartsWith("\uFEFF"u8)) utf8 = utf8[3..];
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { MaxDepth = 32 });
        var lines = new LineCounter();
        try
        {
            if (!reader.Read())
            {
                faults.Add(new GuideFault(1, null, $"the file is empty"));
                return null;
            }

            var root = ReadValue(ref reader, utf8, ref lines, faults);
            if (reader.Read()) faults.Add(new GuideFault(lines.At(utf8, reader.TokenStartIndex), null, $"text after the end of the guide"));
            return root;
        }
        catch (JsonException e)
        {
            faults.Add(new GuideFault((int)(e.LineNumber ?? 0) + 1, null, $"not valid JSON here: {FirstSentence(e.Message)}"));
            return null;
        }
        catch (InvalidOperationException)
        {
            // Utf8JsonReader.GetString throws this for bytes or escapes that are not valid Unicode text.
            faults.Add(new GuideFault(lines.At(utf8, reader.TokenStartIndex), null, $"text that is not valid UTF-8"));
            return null;
        }
    }

    public JsonLine? Member(string name)
    {
        foreach (var member in Members)
        {
            if (member.Key == name) return member.Value;
        }

        return null;
    }

    private static JsonLine ReadValue(ref Utf8JsonReader reader, ReadOnlySpan<byte> utf8, ref LineCounter lines, List<GuideFault> faults)
    {
        var line = lines.At(utf8, reader.TokenStartIndex);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                return ReadObject(ref reader, utf8, ref lines, line, faults);
            case JsonTokenType.StartArray:
                var array = new JsonLine(JsonValueKind.Array, line);
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    array.Items.Add(ReadValue(ref reader, utf8, ref lines, faults));
                }

                return array;
            case JsonTokenType.String:
                return new JsonLine(JsonValueKind.String, line) { Text = reader.GetString() };
            case JsonTokenType.Number:
                return new JsonLine(JsonValueKind.Number, line) { Number = reader.TryGetDouble(out var n) ? n : double.NaN };
            case JsonTokenType.True:
                return new JsonLine(JsonValueKind.True, line);
            case JsonTokenType.False:
                return new JsonLine(JsonValueKind.False, line);
            default:
                return new JsonLine(JsonValueKind.Null, line);
        }
    }

    private static JsonLine ReadObject(ref Utf8JsonReader reader, ReadOnlySpan<byte> utf8, ref LineCounter lines, int line, List<GuideFault> faults)
    {
        var node = new JsonLine(JsonValueKind.Object, line);
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var name = reader.GetString()!;
            var at = lines.At(utf8, reader.TokenStartIndex);
            reader.Read();
            var value = ReadValue(ref reader, utf8, ref lines, faults);
            if (node.Member(name) is not null) faults.Add(new GuideFault(at, null, $"\"{name}\" is given twice"));
            else node.Members.Add(new(name, value));
        }

        return node;
    }

    private static string FirstSentence(string message)
    {
        var end = message.IndexOf(" LineNumber", StringComparison.Ordinal);
        return end > 0 ? message[..end] : message;
    }

    /// <summary>Counts line ends up to ever later positions, so that the file is walked once.</summary>
    private struct LineCounter
    {
        private int _line;
        private int _position;

        public int At(ReadOnlySpan<byte> utf8, long index)
        {
            var end = (int)index;
            if (end > _position)
            {
                _line += utf8[_position..end].Count((byte)'\n');
                _position = end;
            }

            return _line + 1;
        }
    }
}
