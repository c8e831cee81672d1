using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.People;
using LibraryDesk.Photos;
using LibraryDesk.TestServers;
using Microsoft.Extensions.DependencyInjection;
using SixLabors.ImageSharp;
using SixLabors.ImageSharp.PixelFormats;

namespace LibraryDesk.Desk.Tests.Cases;

/// <summary>Begins cases for the tests, through the acts themselves.</summary>
internal static class ACase
{
    public static NewCase Pepper { get; } = new("capsicum", "Pepper in the blue pot", Specimen.Plant, 1, null, false, "http://desk.test");

    public static Task<TestLibrary> LibraryAsync(string database) =>
        TestLibrary.CreateAsync(database, services => services.AddSingleton<IPhotoStore>(new MemoryPhotoStore()));

    public static async Task<long> StartAsync(TestLibrary library, Actor actor, NewCase? wanted = null)
    {
        var outcome = await library.Act<StartCase>().StartAsync(actor, wanted ?? Pepper, default);
        Assert.Null(outcome.Refusal);
        return outcome.Match(started => started.CaseIds[0], _ => 0L);
    }

    /// <summary>A case that is on the desk, with one answer in it.</summary>
    public static async Task<long> FiledAsync(TestLibrary library, Actor actor)
    {
        var id = await StartAsync(library, actor);
        Assert.Null((await library.Act<SetParts>().SetAsync(actor, id, null, ["leaves", "flowers"], default)).Refusal);
        Assert.Null((await library.Act<SaveAnswer>().SaveAsync(actor, id, null, GivenAnswer.Of("corolla_spots", "green-yellow"), default)).Refusal);
        Assert.Null((await library.Act<FileCase>().FileAsync(actor, id, default)).Refusal);
        return id;
    }

    public static MemoryStream Photo(byte shade = 120)
    {
        using var picture = new Image<Rgb24>(320, 240, new Rgb24(shade, 90, 40));
        var file = new MemoryStream();
        picture.SaveAsJpeg(file);
        file.Position = 0;
        return file;
    }
}
