using LibraryDesk.Data.Settings;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.Scan;

/// <summary>The hosts under which this desk answers: the one in the settings and the one of the request.</summary>
internal static class OwnHosts
{
    public static IReadOnlyCollection<string> Of(LibrarySettingsRow settings, NavigationManager navigation)
    {
        var asked = new Uri(navigation.BaseUri).Host;
        return Uri.TryCreate(settings.PublicAddress, UriKind.Absolute, out var set) ? [set.Host, asked] : [asked];
    }
}
