using LibraryDesk.Photos.Drawn;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Photos.Tests;

public sealed class DrawnPhotoTests
{
    public static TheoryData<DrawnPart> Parts => [.. Enum.GetValues<DrawnPart>()];

    [Theory]
    [MemberData(nameof(Parts))]
    public void Every_part_is_drawn_and_bears_the_mark(DrawnPart part)
    {
        using var picture = Image.Load<Rgb24>(DrawnPhoto.Draw(new DrawnSubject { Part = part, Corolla = "white", FruitColour = "red" }, 1));
        Assert.True(Colours(picture, 0, 600) > 40, "nothing is drawn");
        // The mark is dark writing on a white band.
        Assert.InRange(DarkShare(picture, 680, 712), 0.02, 0.4);
        Assert.True(picture[4, 716].R > 245);
    }

    [Fact]
    public void The_same_seed_gives_the_same_drawing_and_another_gives_another()
    {
        var flower = new DrawnSubject { Part = DrawnPart.Flower, Spots = "green-yellow" };
        Assert.Equal(DrawnPhoto.Draw(flower, 5), DrawnPhoto.Draw(flower, 5));
        Assert.NotEqual(DrawnPhoto.Draw(flower, 5), DrawnPhoto.Draw(flower, 6));
    }

    [Fact]
    public void A_trait_changes_the_drawing()
    {
        var plain = new DrawnSubject { Part = DrawnPart.Flower };
        Assert.NotEqual(DrawnPhoto.Draw(plain, 5), DrawnPhoto.Draw(plain with { Spots = "green-yellow" }, 5));
        var fruit = new DrawnSubject { Part = DrawnPart.Fruit, FruitColour = "red" };
        Assert.NotEqual(DrawnPhoto.Draw(fruit, 5), DrawnPhoto.Draw(fruit with { FruitColour = "yellow" }, 5));
    }

    [Fact]
    public void A_colour_that_cannot_be_drawn_is_named() =>
        Assert.Contains("'mauve'", Assert.Throws<ArgumentException>(() => DrawnPhoto.Draw(new DrawnSubject { Part = DrawnPart.Fruit, FruitColour = "mauve" }, 1)).Message, StringComparison.Ordinal);

    [Fact]
    public async Task A_drawing_goes_through_the_cleaner_like_a_photo()
    {
        using var cleaner = new PhotoCleaner(new PhotoLimits());
        var photo = (await cleaner.CleanAsync(DrawnPhoto.Draw(new DrawnSubject { Part = DrawnPart.Plant }, 3), CancellationToken.None)).Photo!;
        Assert.Equal((960, 720), (photo.SourceWidth, photo.SourceHeight));
    }

    private static int Colours(Image<Rgb24> picture, int from, int to)
    {
        var seen = new HashSet<Rgb24>();
        for (var y = from; y < to; y += 3) for (var x = 0; x < picture.Width; x += 3) seen.Add(picture[x, y]);
        return seen.Count;
    }

    private static double DarkShare(Image<Rgb24> picture, int from, int to)
    {
        int dark = 0, all = 0;
        for (var y = from; y < to; y++)
        {
            for (var x = 280; x < 680; x++, all++) if (picture[x, y].G < 120) dark++;
        }
        return (double)dark / all;
    }
}
