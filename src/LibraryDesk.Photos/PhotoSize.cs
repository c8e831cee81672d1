namespace LibraryDesk.Photos;

/// <summary>The three stored sizes of a photo. The number is the longest edge in pixels; nothing is ever enlarged.</summary>
public enum PhotoSize
{
    /// <summary>For zooming and measuring.</summary>
    Large = 1600,

    /// <summary>For a page.</summary>
    Medium = 800,

    /// <summary>For lists.</summary>
    Small = 240,
}
