using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Tests.Language;

public class DatesTests
{
    // ISO 8601 writes the difference from UTC in hours and minutes, with a sign (from memory).
    [Theory]
    [InlineData("en", 2.0, "2 April 2026, 14:05 UTC+02:00")]
    [InlineData("en", -3.5, "2 April 2026, 14:05 UTC-03:30")]
    [InlineData("en", 0.0, "2 April 2026, 14:05 UTC")]
    [InlineData("es", 2.0, "2 de abril de 2026, 14:05 UTC+02:00")]
    public void A_minute_says_by_which_clock(string language, double hours, string words)
    {
        using var spoken = Languages.Speak(language);
        Assert.Equal(words, Dates.Minute(new DateTimeOffset(2026, 4, 2, 14, 5, 0, TimeSpan.FromHours(hours))));
    }
}
