using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Calendar;

internal static class CalendarRegistration
{
    public static void AddCalendar(this IServiceCollection services)
    {
        services.AddSingleton<CalendarLinks>();
        services.AddSingleton<ReadCalendar>();
    }
}
