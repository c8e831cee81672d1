namespace LibraryDesk.Desk.Cases.Review;

/// <summary>What a form's text becomes in a row.</summary>
internal static class ReviewText
{
    /// <summary>Trimmed; null where nothing was said.</summary>
    public static string? Kept(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
