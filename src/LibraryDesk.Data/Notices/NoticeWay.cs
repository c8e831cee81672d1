namespace LibraryDesk.Data.Notices;

/// <summary>How a person wants to be told.</summary>
public enum NoticeWay
{
    Off,
    InApp,
    Email,
    Both,
}
