using System.Diagnostics.CodeAnalysis;

namespace LibraryDesk.Photos;

/// <summary>Either a cleaned photo or the reason why there is none.</summary>
public sealed class CleaningResult
{
    private CleaningResult(CleanedPhoto? photo, PhotoRefusal? refusal)
    {
        Photo = photo;
        Refusal = refusal;
    }

    /// <summary>The photo, or null when it was refused.</summary>
    public CleanedPhoto? Photo { get; }

    /// <summary>The reason, or null when the photo was taken.</summary>
    public PhotoRefusal? Refusal { get; }

    /// <summary>True when there is a photo.</summary>
    [MemberNotNullWhen(true, nameof(Photo))]
    [MemberNotNullWhen(false, nameof(Refusal))]
    public bool Taken => Photo is not null;

    /// <summary>Reads the result: exactly one of the two is called.</summary>
    public T Match<T>(Func<CleanedPhoto, T> taken, Func<PhotoRefusal, T> refused)
    {
        ArgumentNullException.ThrowIfNull(taken);
        ArgumentNullException.ThrowIfNull(refused);
        return Taken ? taken(Photo) : refused(Refusal);
    }

    public static implicit operator CleaningResult(CleanedPhoto photo) => new(photo, null);

    public static implicit operator CleaningResult(PhotoRefusal refusal) => new(null, refusal);

    /// <summary>A result with a photo.</summary>
    public static CleaningResult FromCleanedPhoto(CleanedPhoto photo) => photo;

    /// <summary>A result with a refusal.</summary>
    public static CleaningResult FromPhotoRefusal(PhotoRefusal refusal) => refusal;
}
