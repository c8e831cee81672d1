using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using LibraryDesk.Lineage.Acts;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>Seed acts as canonical JSON (RFC 8785) and back. What is not known (null) is left out; enumerations are kebab text; days are <c>yyyy-MM-dd</c>.</summary>
public static class SeedActJson
{
    private static readonly Dictionary<EntryKind, (string Name, Type Act)> _kinds = new()
    {
        [EntryKind.Accessioned] = ("accessioned", typeof(Accessioned)),
        [EntryKind.TransferredIn] = ("transferred-in", typeof(TransferredIn)),
        [EntryKind.LotMade] = ("lot-made", typeof(LotMade)),
        [EntryKind.Packeted] = ("packeted", typeof(Packeted)),
        [EntryKind.Requested] = ("requested", typeof(Requested)),
        [EntryKind.Picked] = ("picked", typeof(Picked)),
        [EntryKind.Lent] = ("lent", typeof(Lent)),
        [EntryKind.LoanEnded] = ("loan-ended", typeof(LoanEnded)),
        [EntryKind.GrownOut] = ("grown-out", typeof(GrownOut)),
        [EntryKind.Returned] = ("returned", typeof(Returned)),
        [EntryKind.GerminationTested] = ("germination-tested", typeof(GerminationTested)),
        [EntryKind.Named] = ("named", typeof(Named)),
        [EntryKind.Held] = ("held", typeof(Held)),
        [EntryKind.Released] = ("released", typeof(Released)),
        [EntryKind.Moved] = ("moved", typeof(Moved)),
        [EntryKind.Counted] = ("counted", typeof(Counted)),
        [EntryKind.Discarded] = ("discarded", typeof(Discarded)),
        [EntryKind.TransferredOut] = ("transferred-out", typeof(TransferredOut)),
        [EntryKind.Recalled] = ("recalled", typeof(Recalled)),
        [EntryKind.Corrected] = ("corrected", typeof(Corrected)),
    };

    private static readonly Dictionary<string, EntryKind> _byName = _kinds.ToDictionary(kind => kind.Value.Name, kind => kind.Key, StringComparer.Ordinal);

    private static readonly JsonSerializerOptions _options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        AllowDuplicateProperties = false,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false), new ActTextConverter() },
    };

    /// <summary>The kind as the ledger writes it, such as <c>lot-made</c>.</summary>
    public static string NameOf(EntryKind kind) => _kinds[kind].Name;

    /// <summary>The kind from its text; null for a text that is none.</summary>
    public static EntryKind? KindOf(string? name) => name is not null && _byName.TryGetValue(name, out var kind) ? kind : null;

    /// <summary>The act as canonical JSON.</summary>
    public static string Write(SeedAct act)
    {
        ArgumentNullException.ThrowIfNull(act);
        using var document = JsonSerializer.SerializeToDocument(act, act.GetType(), _options);
        return CanonicalJson.Write(document.RootElement);
    }

    /// <summary>The act of a kind from its JSON.</summary>
    /// <exception cref="JsonException">The text is not what the kind asks for.</exception>
    public static SeedAct Read(EntryKind kind, string json)
    {
        try
        {
            return (SeedAct)(JsonSerializer.Deserialize(json, _kinds[kind].Act, _options) ?? throw new JsonException("An act cannot be null."));
        }
        catch (ArgumentException wrong)
        {
            // A checked constructor refused a figure: for the reader of a ledger that is bad text, not a bug.
            throw new JsonException(wrong.Message, wrong);
        }
    }

    /// <summary>True when a payload stands in canonical form.</summary>
    /// <exception cref="JsonException">Not JSON at all.</exception>
    public static bool IsCanonical(string json) => CanonicalScan.IsSurelyCanonical(json) || CanonicalJson.Write(json) == json;

    private sealed class ActTextConverter : JsonConverter<ActText>
    {
        public override ActText Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            var node = JsonNode.Parse(ref reader) as JsonObject ?? throw new JsonException("An act inside a correction is an object.");
            var kind = KindOf(node["kind"]?.GetValue<string>()) ?? throw new JsonException("The act inside a correction has no known kind.");
            var facts = node["facts"] ?? throw new JsonException("The act inside a correction has no facts.");
            return new(SeedActJson.Read(kind, facts.ToJsonString()));
        }

        public override void Write(Utf8JsonWriter writer, ActText value, JsonSerializerOptions options)
        {
            writer.WriteStartObject();
            writer.WriteString("kind", NameOf(value.Act.Kind));
            writer.WritePropertyName("facts");
            JsonSerializer.Serialize(writer, value.Act, value.Act.GetType(), options);
            writer.WriteEndObject();
        }
    }
}
