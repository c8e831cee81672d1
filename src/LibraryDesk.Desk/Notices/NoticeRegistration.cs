using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Notices;

/// <summary>The acts around telling people.</summary>
internal static class NoticeRegistration
{
    public static void AddNotices(this IServiceCollection services)
    {
        services.AddSingleton<NoticeChoices>();
        services.AddSingleton<ReadNotices>();
    }
}
