namespace LibraryDesk.Web.Features.Filing;

/// <summary>Addresses of stored photos. Whoever asks must be allowed to see the case.</summary>
public static class PhotoLinks
{
    public static string Small(Guid photoId) => $"/photos/{photoId}/small";

    public static string Medium(Guid photoId) => $"/photos/{photoId}/medium";

    public static string Large(Guid photoId) => $"/photos/{photoId}/large";
}
