using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>How far the reader is with a case.</summary>
public enum MyPart
{
    NotYet,
    /// <summary>Sealed; the review is still to be finished.</summary>
    InReview,
    Finished,
}

/// <summary>
/// One case of the review list. Nothing here comes from the odds or from what anybody said: only how many opinions there are, how long it
/// waits and what the plant carries. Whose plant it is does not stand here either.
/// </summary>
/// <param name="Parts">Part ids of the latest look, in the guide's order.</param>
/// <param name="PartNames">Their names.</param>
/// <param name="FirstPhoto">Null without photos.</param>
/// <param name="WaitingDays">Whole days since it was filed, or opened again.</param>
/// <param name="OpinionsSealed">Opinions of this round, sealed or final.</param>
/// <param name="OpinionWanted">Number of the opinion wanted; 0 while enough are in and being reviewed.</param>
/// <param name="IsSeasonClosing">True when a growing plant carries what comes last: what flowers and leaves can tell goes soon.</param>
public sealed record QueueLine(
    long CaseId,
    string Title,
    CaseState State,
    IReadOnlyList<string> Parts,
    IReadOnlyList<string> PartNames,
    int Looks,
    int Photos,
    Guid? FirstPhoto,
    int WaitingDays,
    int OpinionsSealed,
    int OpinionWanted,
    MyPart Mine,
    int LooksAsked,
    bool IsSeasonClosing);

/// <summary>Orders the review list by what helps most. The weights are the desk's own, no source; they are said on the page.</summary>
public static class QueueOrder
{
    /// <summary>An opinion that may settle a case counts as so many days of waiting.</summary>
    public const int SettlingDays = 30;

    /// <summary>A closing season counts as so many days of waiting.</summary>
    public const int SeasonDays = 14;

    /// <summary>Waiting counts up to this, so that an old case cannot bury all others.</summary>
    public const int MostDays = 60;

    /// <summary>What a reader began first, then what is open before what waits for a look, then by need; the number breaks ties.</summary>
    public static IReadOnlyList<QueueLine> ByHelp(IEnumerable<QueueLine> lines) =>
    [
        .. lines.OrderBy(line => line.Mine switch { MyPart.InReview => 0, MyPart.NotYet => 1, _ => 2 })
            .ThenBy(line => line.State == CaseState.WaitingForLook)
            .ThenByDescending(Need)
            .ThenBy(line => line.CaseId),
    ];

    /// <summary>Longest waiting first.</summary>
    public static IReadOnlyList<QueueLine> ByWaiting(IEnumerable<QueueLine> lines) =>
        [.. lines.OrderByDescending(line => line.WaitingDays).ThenBy(line => line.CaseId)];

    /// <summary>The need for an opinion, in days of waiting.</summary>
    public static int Need(QueueLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var settles = (line.OpinionsSealed > 0, line.OpinionWanted > 0) switch
        {
            (true, true) => SettlingDays,
            (true, false) => -SettlingDays,
            _ => 0,
        };
        return settles + Math.Min(line.WaitingDays, MostDays) + (line.IsSeasonClosing ? SeasonDays : 0);
    }
}
