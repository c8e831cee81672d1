using System.Text.Json;
using System.Text.Json.Serialization;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>Writes a seed id as a plain number.</summary>
public sealed class SeedIdConverter<T> : JsonConverter<T>
    where T : struct, ISeedId<T>
{
    /// <inheritdoc/>
    public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => T.From(reader.GetInt64());

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteNumberValue(value.Value);
    }
}

/// <summary>Writes a person as the lower-case hyphenated text of the opaque id.</summary>
public sealed class PersonIdConverter : JsonConverter<PersonId>
{
    /// <inheritdoc/>
    public override PersonId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetGuid());

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, PersonId value, JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStringValue(value.Value);
    }
}
