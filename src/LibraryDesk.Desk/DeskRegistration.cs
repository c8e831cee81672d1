using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Mail;
using LibraryDesk.Desk.Record;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Settings;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk;

/// <summary>Puts the desk's acts into a service collection. Each feature lists its own acts.</summary>
public static class DeskRegistration
{
    public static IServiceCollection AddDesk(this IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<LibrarySettings>();
        services.AddSingleton<SendDueMail>();
        services.AddSingleton<ReadRecord>();
        services.AddPeople();
        services.AddSeeds();
        services.AddCases();
        services.AddReview();
        return services;
    }
}
