using LibraryDesk.Data.Settings;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>Where a packet's code leads: the address in the settings, else the one this page was asked for under.</summary>
internal static class PacketAddress
{
    public static string Of(string code, LibrarySettingsRow settings, NavigationManager navigation) =>
        $"{(settings.PublicAddress.Length > 0 ? settings.PublicAddress : navigation.BaseUri.TrimEnd('/'))}/p/{code}";
}
