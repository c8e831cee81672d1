using LibraryDesk.Photos;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>Where a photo is served. The server checks who may see it.</summary>
internal static class PhotoLink
{
    public static string To(Guid photo, PhotoSize size) => FormattableString.Invariant($"/photos/{photo:D}/{Name(size)}");

    private static string Name(PhotoSize size) => size switch
    {
        PhotoSize.Large => "large",
        PhotoSize.Medium => "medium",
        _ => "small",
    };
}
