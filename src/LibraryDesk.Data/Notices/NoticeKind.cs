namespace LibraryDesk.Data.Notices;

/// <summary>What a person can be told of.</summary>
public enum NoticeKind
{
    /// <summary>A plant should flower or ripen by now, and that would tell more.</summary>
    Season,

    /// <summary>A volunteer asks for one more look.</summary>
    LookAsked,

    /// <summary>A case is determined, or was opened again.</summary>
    Decided,

    /// <summary>Seed that the person has or had is called back.</summary>
    Recall,
}
