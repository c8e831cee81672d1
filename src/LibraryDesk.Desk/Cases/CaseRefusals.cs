namespace LibraryDesk.Desk.Cases;

/// <summary>What the desk says no to on a case.</summary>
public static class CaseRefusals
{
    public const string NotFoundCode = "case.not-found";
    public const string FinishedCode = "case.finished";
    public const string ChangedMeanwhileCode = "case.changed-meanwhile";
    public const string OwnCaseCode = "case.own";
    public const string SealFirstCode = "case.seal-first";

    /// <summary>Also said of a case that somebody else owns: whether it exists is nobody's business.</summary>
    public static Refusal NotFound { get; } = new(NotFoundCode,
        "There is no such case for you. Check the number, sign in, or open the link from the letter you got when you filed it.");

    public static Refusal Finished { get; } = new(FinishedCode,
        "This case is finished, so nothing can be changed in it. If there is something new to see, ask for it to be opened again.");

    public static Refusal ChangedMeanwhile { get; } = new(ChangedMeanwhileCode,
        "Somebody changed this case at the same moment. Look at it as it is now, then try again.");

    public static Refusal OwnCase { get; } = new(OwnCaseCode,
        "This is your own case, or one you filed for somebody, so other volunteers give the opinions. You can still add looks and suggestions.");

    public static Refusal SealFirst { get; } = new(SealFirstCode,
        "Give your own opinion first. The odds open to you once it is sealed.");
}
