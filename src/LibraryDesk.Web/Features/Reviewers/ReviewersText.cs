using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Reviewers;

/// <summary>The words of how often each reviewer is right.</summary>
internal static class ReviewersText
{
    public static WordBook Say { get; } = new(typeof(ReviewersText));
}
