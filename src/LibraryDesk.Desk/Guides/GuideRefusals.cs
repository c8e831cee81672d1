namespace LibraryDesk.Desk.Guides;

/// <summary>What the desk says no to on a crop guide.</summary>
public static class GuideRefusals
{
    public const string NotFoundCode = "guide.not-found";
    public const string VersionGoneCode = "guide.version-gone";
    public const string NoDraftCode = "guide.no-draft";
    public const string DraftThereCode = "guide.draft-there";
    public const string ChangedMeanwhileCode = "guide.changed-meanwhile";
    public const string TargetGoneCode = "guide.target-gone";
    public const string TooLongCode = "guide.too-long";
    public const string NothingToUndoCode = "guide.nothing-to-undo";
    public const string FaultyCode = "guide.faulty";
    public const string NothingChangedCode = "guide.nothing-changed";
    public const string RerunFirstCode = "guide.rerun-first";
    public const string NoteMissingCode = "guide.note";
    public const string NotNewerCode = "guide.not-newer";
    public const string NotOpenCode = "guide.case-not-open";
    public const string CandidateGoneCode = "guide.candidate-gone";

    public static Refusal NotFound { get; } = new(NotFoundCode, "The desk has no such crop guide. Choose one from the list.");

    public static Refusal NoDraft { get; } = new(NoDraftCode, "There is no draft of this guide. Begin one first.");

    public static Refusal DraftThere { get; } = new(DraftThereCode, "There is a draft of this guide already. Go on with it, or discard it first.");

    public static Refusal ChangedMeanwhile { get; } = new(ChangedMeanwhileCode,
        "Somebody else changed this draft just now. What you typed is kept below: look at theirs, then save again if yours is still right.");

    public static Refusal TargetGone { get; } = new(TargetGoneCode, "What you changed is not in the draft any more. Open it anew from the draft's page.");

    public static Refusal TooLong { get; } = new(TooLongCode, "One of the texts is far too long for a guide. Shorten it and save again.");

    public static Refusal NothingToUndo { get; } = new(NothingToUndoCode, "There is no change left to undo or to put back.");

    public static Refusal Faulty { get; } = new(FaultyCode, "The draft has faults, so it can be neither re-run nor published. The list of faults leads to each.");

    public static Refusal NothingChanged { get; } = new(NothingChangedCode, "The draft says the same as the version in use. There is nothing to publish.");

    public static Refusal RerunFirst { get; } = new(RerunFirstCode,
        "The re-run of the determined cases does not match: the draft, the version in use or the cases changed since. Run it again, look at it, then publish.");

    public static Refusal NoteMissing(int least) => new(NoteMissingCode, $"Say in at least {least} characters what changed and why. Everybody can read it beside the version.");

    public static Refusal NoteTooLong(int most) => new(NoteMissingCode, $"Keep the note under {most} characters.");

    public static Refusal NotNewer { get; } = new(NotNewerCode, "This case is read by the version in use already.");

    public static Refusal NotOpen { get; } = new(NotOpenCode, "A case that is determined or closed keeps the guide version it was judged by. Open it again first.");

    public static Refusal CandidateGone(string name) => new(CandidateGoneCode,
        $"An opinion on this case names {name}, which the newer version does not have. The case stays with its version.");

    /// <summary>Said wherever a case or a draft leans on a version that the database does not hold.</summary>
    public static Refusal VersionGone(string guideId, string version) => new(VersionGoneCode,
        $"Version {version} of the guide {guideId} is not in this library's database, so nothing can be read by it. No answer is lost. Restore the version from a backup; then everything is as it was.");
}
