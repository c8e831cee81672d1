namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Refusals of the review desk.</summary>
public static class ReviewRefusals
{
    public const string OwnCaseCode = CaseRefusals.OwnCaseCode;
    public const string NotOpenCode = "review.not-open";
    public const string AlreadySealedCode = "review.already-sealed";
    public const string SealFirstCode = "review.seal-first";
    public const string UnknownTaxonCode = "review.unknown-taxon";
    public const string UnknownQualifierCode = "review.unknown-qualifier";
    public const string OddsRangeCode = "review.odds-range";
    public const string NoteTooLongCode = "review.note-too-long";
    public const string ChangedMeanwhileCode = "review.changed-meanwhile";
    public const string ReasonMissingCode = "review.reason-missing";
    public const string NotDeterminedCode = "review.not-determined";
    public const string AlreadyClosedCode = "review.already-closed";
    public const string NoSuchAnswerCode = "review.no-such-answer";
    public const string NoSuchRequestCode = "review.no-such-request";
    public const string NoSuchSuggestionCode = "review.no-such-suggestion";
    public const string NothingAskedCode = "review.nothing-asked";
    public const string NeverAskedCode = "review.never-asked";
    public const string UnknownFormCode = "review.unknown-form";
    public const string VarietyTooLongCode = "review.variety-too-long";
    public const string GroundsMissingCode = "review.grounds-missing";
    public const string OwnAnswerCode = "review.own-answer";
    public const string AgainstTheTraitsCode = "review.against-the-traits";

    /// <summary>Longest note or reason, in characters.</summary>
    public const int LongestNote = 2000;

    public static Refusal OwnCase { get; } =
        new(OwnCaseCode, "This is your own case. Nobody reviews or determines their own; others will. Pick the next one.");

    public static Refusal NotOpen { get; } =
        new(NotOpenCode, "This case is not open for opinions any more. What you wrote is kept below; if it changes things, open the case again with your reason.");

    public static Refusal AlreadySealed { get; } =
        new(AlreadySealedCode, "Your opinion on this case is already sealed. Change it in your review, below.");

    public static Refusal SealFirst { get; } =
        new(SealFirstCode, "Seal your own opinion first. Odds, reasons, suggestions and other opinions open after that.");

    public static Refusal UnknownTaxon { get; } =
        new(UnknownTaxonCode, "Choose one of the candidates of this case's crop guide, or say that these looks do not tell.");

    public static Refusal UnknownQualifier { get; } =
        new(UnknownQualifierCode, "The qualifier is none, cf. or aff.; choose one of these.");

    public static Refusal OddsRange { get; } =
        new(OddsRangeCode, "Your odds are a whole number from 0 to 20. Leave the box empty if you would rather not say.");

    public static Refusal NoteTooLong { get; } =
        new(NoteTooLongCode, "That is over 2,000 characters. Shorten it and send it again.");

    public static Refusal ChangedMeanwhile { get; } =
        new(ChangedMeanwhileCode, "This changed while you were writing. Look at what stands now and send yours again.");

    public static Refusal NotDetermined { get; } =
        new(NotDeterminedCode, "Only a determined or closed case can be opened again; this one still is open.");

    public static Refusal AlreadyClosed { get; } =
        new(AlreadyClosedCode, "This case is closed already. Open it again with a reason if something does not fit.");

    public static Refusal NoSuchAnswer { get; } =
        new(NoSuchAnswerCode, "That answer is not there any more; it may have been taken back. Look at the scores again.");

    public static Refusal NoSuchRequest { get; } =
        new(NoSuchRequestCode, "That request is no longer open: the look came in, or it was withdrawn.");

    public static Refusal NoSuchSuggestion { get; } =
        new(NoSuchSuggestionCode, "That suggestion is not yours to withdraw, or it was withdrawn already.");

    public static Refusal NothingAsked { get; } =
        new(NothingAskedCode, "Say what to look at: choose a trait or a part, or write it in your own words.");

    public static Refusal NeverAsked { get; } =
        new(NeverAskedCode, "Taste, heat and smell are never asked for. Choose another trait.");

    public static Refusal UnknownForm { get; } =
        new(UnknownFormCode, "Choose a form of the candidate you named, or leave the form open.");

    public static Refusal VarietyTooLong { get; } =
        new(VarietyTooLongCode, "A variety name has at most 160 characters. Shorten it and send it again.");

    public static Refusal NotYoursToClose { get; } =
        new(PeopleRefusals.MayNotCode, "Before it is determined, only its owner or a librarian closes a case. Ask a librarian, or ask the member for a look.");

    public static Refusal OwnAnswer { get; } =
        new(OwnAnswerCode, "This score is your own; change it instead of contesting it.");

    public static Refusal GroundsMissing(int least) =>
        new(GroundsMissingCode, $"Determining alone needs stated grounds of at least {least} characters: what you saw, and what it rules out.");

    public static Refusal ReasonMissing(int least) =>
        new(ReasonMissingCode, $"Give your reason in at least {least} characters, so that others can follow it later.");
}
