using LibraryDesk.Desk.Cases.Odds;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Guides;

/// <summary>The acts on crop guides.</summary>
internal static class GuidesRegistration
{
    public static IServiceCollection AddGuides(this IServiceCollection services)
    {
        services.AddSingleton<GuideShelf>();
        services.AddSingleton<ReadVersions>();
        services.AddSingleton<BeginDraft>();
        services.AddSingleton<ReadDraft>();
        services.AddSingleton<ReadReliability>();
        services.AddSingleton<ChangeDraft>();
        services.AddSingleton<RerunCases>();
        services.AddSingleton<PublishGuide>();
        services.AddSingleton<MoveCase>();
        return services;
    }
}
