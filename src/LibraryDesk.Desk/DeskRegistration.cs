using LibraryDesk.Desk.Calendar;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.Mail;
using LibraryDesk.Desk.Notices;
using LibraryDesk.Desk.Record;
using LibraryDesk.Desk.Reviewers;
using LibraryDesk.Desk.Search;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Varieties;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk;

/// <summary>Puts the desk's acts into a service collection. Each feature lists its own acts.</summary>
public static class DeskRegistration
{
    public static IServiceCollection AddDesk(this IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<LibraryClock>();
        services.AddSingleton<LibrarySettings>();
        services.AddSingleton<SendDueMail>();
        services.AddSingleton<ReadRecord>();
        services.AddSingleton<ReadReviewers>();
        services.AddPeople();
        services.AddSeeds();
        services.AddGuides();
        services.AddVarieties();
        services.AddCases();
        services.AddReview();
        services.AddNotices();
        services.AddCalendar();
        // Scoped, because it asks the accounts, which are.
        services.AddScoped<SearchDesk>();
        return services;
    }
}
