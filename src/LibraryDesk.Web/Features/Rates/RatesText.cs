using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Rates;

/// <summary>The words of the table of rates.</summary>
internal static class RatesText
{
    public static WordBook Say { get; } = new(typeof(RatesText));
}
