namespace LibraryDesk.Desk.Cases.Review;

/// <summary>Kinds of lines that the review desk writes into a case's history.</summary>
public static class ReviewEvents
{
    public const string OpinionSealed = "opinion-sealed";
    public const string OpinionFinished = "opinion-finished";
    /// <summary>The detail is the number of the opinion that is wanted.</summary>
    public const string OpinionWanted = "opinion-wanted";
    public const string Suggested = "suggested";
    public const string SuggestionWithdrawn = "suggestion-withdrawn";
    /// <summary>The detail is what was asked for.</summary>
    public const string LookAsked = "look-asked";
    public const string LookRequestWithdrawn = "look-request-withdrawn";
    /// <summary>The detail is the taxon id with its qualifier before it.</summary>
    public const string Determined = "determined";
    /// <summary>The detail is the reason.</summary>
    public const string Reopened = "reopened";
    /// <summary>The detail is what was learned.</summary>
    public const string Closed = "closed";
}
