using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Desk.Cases.Sweeping;
using LibraryDesk.Desk.Cases.Season;
using LibraryDesk.Photos;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace LibraryDesk.Desk.Cases;

/// <summary>The acts around a case but those of reviewing it.</summary>
internal static class CasesRegistration
{
    public static IServiceCollection AddCases(this IServiceCollection services)
    {
        services.TryAddSingleton<IPhotoStore>(s =>
            new FilePhotoStore(s.GetRequiredService<IConfiguration>()["Photos:Folder"] ?? "app-data/photos"));
        services.TryAddSingleton(_ => new PhotoCleaner(new PhotoLimits()));
        services.AddSingleton<CaseFeed>();
        services.AddSingleton<RankCase>();
        services.AddSingleton<StartCase>();
        services.AddSingleton<RenameCase>();
        services.AddSingleton<SetParts>();
        services.AddSingleton<SaveAnswer>();
        services.AddSingleton<TakeBackAnswer>();
        services.AddSingleton<AddPhoto>();
        services.AddSingleton<RemovePhoto>();
        services.AddSingleton<SweepPhotos>();
        services.AddSingleton<AddOriginClue>();
        services.AddSingleton<FileCase>();
        services.AddSingleton<AddLook>();
        services.AddSingleton<WithdrawCase>();
        services.AddSingleton<ReadCase>();
        services.AddSingleton<ListCases>();
        services.AddSingleton<OpenPhoto>();
        services.AddSingleton<FollowCase>();
        services.AddSingleton<GuestKeySeal>();
        services.AddSingleton<RemindSeason>();
        return services;
    }
}
