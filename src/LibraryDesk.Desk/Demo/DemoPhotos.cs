using System.Text.Json;
using System.Text.Json.Serialization;
using LibraryDesk.Photos.Drawn;

namespace LibraryDesk.Desk.Demo;

/// <summary>A stand-in picture, drawn.</summary>
internal sealed record DemoPhoto(string Shows, string Caption, byte[] Jpeg);

/// <summary>Draws the demo's pictures, several at a time, before they are needed.</summary>
internal static class DemoPhotos
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    /// <summary>The pictures of each step that has some, in order.</summary>
    public static IReadOnlyDictionary<DemoStep, DemoPhoto[]> Draw(IReadOnlyList<DemoStep> steps, CancellationToken stop) =>
        steps.Where(step => step.Find("photos") is not null)
            .AsParallel().WithCancellation(stop)
            .Select(step => (Step: step, Photos: step.Each("photos").Select(Draw).ToArray()))
            .ToDictionary(drawn => drawn.Step, drawn => drawn.Photos);

    private static DemoPhoto Draw(JsonElement photo) => new(
        photo.GetProperty("shows").GetString()!,
        photo.GetProperty("caption").GetString()!,
        DrawnPhoto.Draw(photo.GetProperty("draw").Deserialize<DrawnSubject>(Options)!, photo.GetProperty("seed").GetInt32()));
}
