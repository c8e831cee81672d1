namespace LibraryDesk.Web.Shared.Marks;

/// <summary>The state a chip shows. Each has its own icon and colour; the word always stands beside them.</summary>
public enum ChipKind
{
    /// <summary>Nothing special yet: a ring.</summary>
    Open,
    /// <summary>Somebody or some season is waited for: a clock on marigold.</summary>
    Waiting,
    /// <summary>Looks and origin agree: a green tick.</summary>
    Fits,
    /// <summary>Some of it fits: a half disc.</summary>
    FitsPoorly,
    /// <summary>It does not fit: a cross on beet.</summary>
    DoesNotFit,
    /// <summary>Two things contradict each other, or a name is in doubt: a fork on beet.</summary>
    Conflict,
    /// <summary>Given but not shown yet: a lock.</summary>
    Sealed,
    /// <summary>Decided: a tick on ink.</summary>
    Determined,
    /// <summary>Growing, on time, told, all well: a green tick.</summary>
    Well,
    /// <summary>Called back or held: a returning arrow on beet.</summary>
    Recalled,
    /// <summary>Over and put away: a ring on tint.</summary>
    Closed,
}
