using System.Globalization;
using System.Text.Json;

namespace LibraryDesk.Desk.Demo;

/// <summary>One act of the demo, as its file tells it. Reading a field that is missing or wrong throws and names the act.</summary>
/// <param name="on">When, UTC.</param>
/// <param name="act">What.</param>
/// <param name="by">Handle of the person; null for the owner of the case.</param>
/// <param name="inCase">Handle of the case; null for an act on seed.</param>
/// <param name="source">The file.</param>
/// <param name="fields">The rest.</param>
internal sealed class DemoStep(DateTimeOffset on, string act, string? by, string? inCase, string source, JsonElement fields)
{
    public DateTimeOffset On => on;

    public string Do => act;

    public string? By => by;

    public string? Case => inCase;

    public JsonElement Fields => fields;

    public string Text(string name) => TextOrNull(name) ?? throw Wrong($"there is no \"{name}\"");

    public string? TextOrNull(string name) => Find(name) is { } value ? value.GetString() : null;

    public int Number(string name) => NumberOrNull(name) ?? throw Wrong($"there is no \"{name}\"");

    public int? NumberOrNull(string name) => Find(name) is { } value ? value.GetInt32() : null;

    public bool? Flag(string name) => Find(name) is { } value ? value.GetBoolean() : null;

    public DateOnly? Day(string name) =>
        TextOrNull(name) is { } text ? DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture) : null;

    public TEnum Word<TEnum>(string name) where TEnum : struct, Enum =>
        Enum.TryParse<TEnum>(Text(name), out var value) ? value : throw Wrong($"\"{name}\" is none of {string.Join(", ", Enum.GetNames<TEnum>())}");

    public TEnum Word<TEnum>(string name, TEnum otherwise) where TEnum : struct, Enum => Find(name) is null ? otherwise : Word<TEnum>(name);

    public IEnumerable<JsonElement> Each(string name) => Find(name) is { } value ? value.EnumerateArray() : [];

    public JsonElement? Find(string name) =>
        Fields.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null ? value : null;

    /// <summary>The demo's own data are at fault: that is a bug, not an expected no.</summary>
    public InvalidOperationException Wrong(string what) => new(string.Create(
        CultureInfo.InvariantCulture, $"{source}, {On:yyyy-MM-dd HH:mm}, {Do}: {what}."));

    /// <summary>The value of an outcome that the demo's story needs.</summary>
    public T Must<T>(Outcome<T> outcome) where T : notnull =>
        outcome.Match(value => value, refusal => throw Wrong($"refused ({refusal.Code}): {refusal.Message}"));
}
