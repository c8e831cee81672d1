using LibraryDesk.Desk.Words;
using Microsoft.AspNetCore.Localization;

namespace LibraryDesk.Web.Start;

/// <summary>Which language a request is answered in: the one chosen on this device, else the account's, else what the browser asks for.</summary>
internal static class SpokenLanguages
{
    /// <summary>The setting that lists the languages a library offers, such as <c>en</c>; all that the desk speaks until it is set.</summary>
    public const string SettingName = "Languages";

    public static void AddSpokenLanguages(this IServiceCollection services, IConfiguration configuration)
    {
        var wished = configuration[SettingName]?.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [.. Languages.All];
        if (wished.Except(Languages.All).FirstOrDefault() is { } unknown)
            throw new InvalidOperationException($"The setting {SettingName} names {unknown}. The desk speaks {string.Join(", ", Languages.All)}.");
        string[] offered = [.. Languages.All.Where(wished.Contains)];
        if (offered.Length == 0) throw new InvalidOperationException($"The setting {SettingName} names no language. Leave it out, or name some of {string.Join(", ", Languages.All)}.");
        Languages.SetLibrarys(offered[0]);
        services.AddLocalization();
        services.Configure<RequestLocalizationOptions>(options =>
        {
            options.SetDefaultCulture(offered[0]).AddSupportedCultures(offered).AddSupportedUICultures(offered);
            // The address never changes the language: a shared link must not.
            options.RequestCultureProviders =
            [
                new CookieRequestCultureProvider(),
                new CustomRequestCultureProvider(static http => Task.FromResult(
                    http.User.FindFirst(Languages.ClaimType) is { } kept ? new ProviderCultureResult(kept.Value) : null)),
                new AcceptLanguageHeaderRequestCultureProvider(),
            ];
        });
    }
}
