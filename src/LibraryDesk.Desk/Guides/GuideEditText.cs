using System.Text.Json;
using System.Text.Json.Serialization;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Desk.Guides;

/// <summary>Changes and re-runs as the database keeps them.</summary>
internal static class GuideEditText
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter() },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        IgnoreReadOnlyProperties = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    public static string Write(GuideEdit edit) => JsonSerializer.Serialize(edit, Json);

    public static GuideEdit ReadEdit(string json) => JsonSerializer.Deserialize<GuideEdit>(json, Json)!;

    public static string Write(GuideRerun rerun) => JsonSerializer.Serialize(rerun, Json);

    public static GuideRerun ReadRerun(string json) => JsonSerializer.Deserialize<GuideRerun>(json, Json)!;
}
