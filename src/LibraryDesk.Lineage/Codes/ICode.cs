using System.Text.Json;
using System.Text.Json.Serialization;

namespace LibraryDesk.Lineage.Codes;

/// <summary>A code that is printed, read by people, and read back.</summary>
public interface ICode<TSelf>
    where TSelf : struct, ICode<TSelf>
{
    /// <summary>Reads what a person typed.</summary>
    static abstract Outcome<TSelf> Read(string? typed);
}

/// <summary>Writes a code as its printed text.</summary>
public sealed class CodeConverter<T> : JsonConverter<T>
    where T : struct, ICode<T>
{
    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        T.Read(reader.GetString()).Match(code => code, refusal => throw new JsonException(refusal.Message));

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(value.ToString());
    }
}
