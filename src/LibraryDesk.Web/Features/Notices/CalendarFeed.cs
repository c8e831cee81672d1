using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using LibraryDesk.Desk.Calendar;

namespace LibraryDesk.Web.Features.Notices;

/// <summary>A person's days as iCalendar text (RFC 5545): whole days that block no time.</summary>
public static class CalendarFeed
{
    /// <summary>Writes the feed.</summary>
    /// <param name="view">The days.</param>
    /// <param name="library">The library's name, which the calendar goes by.</param>
    /// <param name="site">The desk's address without a slash at its end.</param>
    public static string Write(CalendarView view, string library, string site)
    {
        var calendar = new Ical.Net.Calendar { ProductId = "-//LibraryDesk//Desk calendar//EN", Method = "PUBLISH" };
        calendar.AddProperty("X-WR-CALNAME", library);
        calendar.AddProperty("REFRESH-INTERVAL;VALUE=DURATION", "PT6H");
        var host = new Uri(site).Host;
        foreach (var entry in view.Entries)
        {
            calendar.Events.Add(new CalendarEvent
            {
                Uid = $"{entry.Id}@{host}",
                DtStamp = new CalDateTime(view.Now.UtcDateTime),
                Start = new CalDateTime(entry.Day),
                Summary = entry.Heading,
                Description = $"{entry.Text}\n{site}{entry.Address}",
                Url = new Uri(site + entry.Address),
                Transparency = TransparencyType.Transparent,
            });
        }
        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }
}
