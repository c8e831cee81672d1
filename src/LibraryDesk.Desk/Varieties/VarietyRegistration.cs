using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Varieties;

/// <summary>The acts on variety records; writing one down is <see cref="Seeds.DescribeVariety"/>.</summary>
internal static class VarietyRegistration
{
    public static IServiceCollection AddVarieties(this IServiceCollection services) => services
        .AddSingleton<ReadVarieties>()
        .AddSingleton<VarietyPhotos>()
        .AddSingleton<FitVarieties>();
}
