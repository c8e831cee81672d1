using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing;

namespace LibraryDesk.EndToEnd;

/// <summary>
/// A picture of a screen at a sixteenth of its size, in greys: what stands where, and how dark. Letters blur to a grey, so another version of
/// the browser that smooths edges in its own way draws the same; a part that moved, broke or lost its colour does not.
/// </summary>
internal static class SmallPicture
{
    private const int Field = 16;
    // Of 255: a line of body text is about 60 darker than the paper, another browser's letters change a field by about 5.
    private const int MostShade = 24;
    private const double MostFields = 0.01;

    /// <summary>The small picture of a screenshot; what is not whole at the right and lower edge is left out.</summary>
    public static Image<L8> Of(byte[] screenshot, int mostHeight)
    {
        using var whole = Image.Load<L8>(screenshot);
        var (width, height) = (whole.Width / Field, Math.Min(whole.Height, mostHeight) / Field);
        whole.Mutate(picture => picture.Crop(width * Field, height * Field).Resize(new ResizeOptions { Size = new Size(width, height), Sampler = KnownResamplers.Box, Mode = ResizeMode.Stretch }));
        return whole.Clone();
    }

    /// <summary>Says how two differ; null where they are alike.</summary>
    public static string? Difference(Image<L8> was, Image<L8> now)
    {
        if (was.Width != now.Width || Math.Abs(was.Height - now.Height) > 1) return $"it was {was.Width * Field} x {was.Height * Field} pixels and is {now.Width * Field} x {now.Height * Field}";
        var height = Math.Min(was.Height, now.Height);
        var other = 0;
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < was.Width; x++)
            {
                if (Math.Abs(was[x, y].PackedValue - now[x, y].PackedValue) > MostShade) other++;
            }
        }
        return other > was.Width * height * MostFields ? $"{other} of its {was.Width * height} fields differ" : null;
    }
}
