using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.People;

namespace LibraryDesk.Desk.Tests.Cases;

public class CaseAccessTests
{
    private static readonly Guid Owner = Guid.NewGuid();
    private static readonly Guid Other = Guid.NewGuid();

    [Fact]
    public void A_draft_is_seen_by_its_owner_alone()
    {
        var draft = Draft(Owner);
        Assert.True(CaseAccess.MaySee(Actor.Member(Owner), draft));
        Assert.False(CaseAccess.MaySee(Actor.Member(Other), draft));
        Assert.False(CaseAccess.MaySee(Actor.Librarian(Other), draft));
        Assert.False(CaseAccess.MaySee(Actor.Visitor, draft));
    }

    [Fact]
    public void A_filed_case_is_seen_by_volunteers_but_not_by_other_members()
    {
        var filed = Filed(Owner);
        Assert.True(CaseAccess.MaySee(Actor.Volunteer(Other), filed));
        Assert.False(CaseAccess.MaySee(Actor.Member(Other), filed));
    }

    [Theory]
    [InlineData("right", true)]
    [InlineData("other.right", true)]
    [InlineData("wrong", false)]
    [InlineData("", false)]
    [InlineData("right ", false)]
    public void A_guest_needs_the_secret_of_the_link(string key, bool sees)
    {
        var row = Filed(null);
        row.GuestKeyHash = CaseAccess.HashOf("right");
        Assert.Equal(sees, CaseAccess.MaySee(Actor.Guest(key), row));
    }

    [Fact]
    public void A_case_without_a_guest_opens_to_no_key()
    {
        Assert.False(CaseAccess.MaySee(Actor.Guest(""), Filed(Owner)));
        Assert.False(CaseAccess.MaySee(Actor.Visitor, Filed(null)));
    }

    [Fact]
    public void Nobody_reviews_their_own_case_or_one_they_filed_for_somebody()
    {
        var walkIn = Filed(null);
        walkIn.FiledForById = Other;
        Assert.Equal(CaseRefusals.OwnCaseCode, CaseAccess.WhyNotReview(Actor.Volunteer(Owner), Filed(Owner))?.Code);
        Assert.Equal(CaseRefusals.OwnCaseCode, CaseAccess.WhyNotReview(Actor.Volunteer(Other), walkIn)?.Code);
        Assert.Null(CaseAccess.WhyNotReview(Actor.Volunteer(Other), Filed(Owner)));
    }

    [Fact]
    public void A_member_reviews_nothing() =>
        Assert.Equal(PeopleRefusals.MayNotCode, CaseAccess.WhyNotReview(Actor.Member(Other), Filed(Owner))?.Code);

    [Fact]
    public void The_odds_open_to_a_volunteer_with_the_seal()
    {
        var filed = Filed(Owner);
        Assert.Equal(CaseRefusals.SealFirstCode, CaseAccess.WhyNoOdds(Actor.Volunteer(Other), filed, hasSealed: false)?.Code);
        Assert.Null(CaseAccess.WhyNoOdds(Actor.Volunteer(Other), filed, hasSealed: true));
        Assert.Null(CaseAccess.WhyNoOdds(Actor.Member(Owner), filed, hasSealed: false));
    }

    private static CaseRow Draft(Guid? owner) => new() { Title = "t", GuideId = "g", GuideVersion = "1", OwnerId = owner };

    private static CaseRow Filed(Guid? owner)
    {
        var row = Draft(owner);
        row.State = CaseState.Open;
        row.FiledAt = DateTimeOffset.UnixEpoch;
        return row;
    }
}
