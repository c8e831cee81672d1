using System.Security.Claims;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.People;
using LibraryDesk.Web.Shared.Layout;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;

namespace LibraryDesk.Web.Tests.Shared;

public class LayoutTests
{
    [Fact]
    public void A_visitor_is_shown_no_door_of_the_staff() =>
        Assert.Equal(["/help", "/record", "/account/sign-in", "/account/sign-up"], Hrefs(null));

    [Fact]
    public void A_volunteer_has_the_queue_and_a_member_has_not()
    {
        Assert.Contains("/queue", Hrefs(DeskRoles.Volunteer));
        Assert.DoesNotContain("/queue", Hrefs(DeskRoles.Member));
    }

    [Fact]
    public void A_librarian_has_lots_loans_recalls_labels_and_settings()
    {
        string[] own = ["/lots", "/loans", "/recalls", "/labels", "/settings"];
        Assert.Subset(Hrefs(DeskRoles.Librarian).ToHashSet(), own.ToHashSet());
        Assert.DoesNotContain("/lots", Hrefs(DeskRoles.Volunteer));
    }

    [Theory]
    [InlineData("dark", "dark")]
    [InlineData("sun", "sun")]
    [InlineData("\"><script>", null)]
    [InlineData("auto", null)]
    public void Only_known_views_are_taken_from_the_cookie(string kept, string? theme)
    {
        var http = new DefaultHttpContext();
        http.Request.Headers.Cookie = $"{ViewMode.CookieName}={Uri.EscapeDataString(kept)}";

        Assert.Equal(theme, ViewMode.ThemeOf(http));
    }

    [Theory]
    [InlineData("Quillbrook Seed Library", "", "Quillbrook", "Seed Library")]
    [InlineData("Seed library", "", "Seed library", null)]
    [InlineData("Quillbrook Seed Library", "Harrow Fen", "Quillbrook Seed Library", "Harrow Fen")]
    public void A_long_name_takes_two_lines_unless_the_library_has_a_second_line(string name, string tagline, string first, string? second)
    {
        var library = new LibraryName(name, tagline);

        Assert.Equal((first, second), (library.First, library.Second));
    }

    [Fact]
    public void The_saved_name_wins_over_the_configured_one()
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection([new("Library:Name", "Configured")]).Build();

        Assert.Equal("Saved", LibraryName.From(new LibrarySettingsRow { Name = "Saved" }, configuration).Full);
        Assert.Equal("Configured", LibraryName.From(new LibrarySettingsRow(), configuration).Full);
    }

    private static List<string> Hrefs(string? role)
    {
        var person = role is null ? null : new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.Role, role)], "test"));
        return [.. SiteLinks.For(person).Select(link => link.Href)];
    }
}
