using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>The acts of the review desk.</summary>
internal static class ReviewRegistration
{
    public static IServiceCollection AddReview(this IServiceCollection services)
    {
        services.AddSingleton<CaseTurn>();
        services.AddSingleton<ReadTraits>();
        services.AddSingleton<DecideCase>();
        services.AddSingleton<ListReviews>();
        services.AddSingleton<ReadReview>();
        services.AddSingleton<ReadOutcome>();
        services.AddSingleton<ListOwnOpinions>();
        services.AddSingleton<ListDetermined>();
        services.AddSingleton<ScoreTrait>();
        services.AddSingleton<ContestAnswer>();
        services.AddSingleton<SealOpinion>();
        services.AddSingleton<FinishOpinion>();
        services.AddSingleton<AddSuggestion>();
        services.AddSingleton<WithdrawSuggestion>();
        services.AddSingleton<AskForLook>();
        services.AddSingleton<WithdrawLookRequest>();
        services.AddSingleton<DetermineAlone>();
        services.AddSingleton<ReopenCase>();
        services.AddSingleton<CloseCase>();
        return services;
    }
}
