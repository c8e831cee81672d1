using Microsoft.AspNetCore.Components.Routing;

namespace LibraryDesk.Web.Shared.Layout;

/// <summary>One link of the main menu.</summary>
/// <param name="Href">Where it leads, from the root.</param>
/// <param name="Text">What the reader sees.</param>
/// <param name="Match">Whether pages below <paramref name="Href"/> count as being there.</param>
public sealed record SiteLink(string Href, string Text, NavLinkMatch Match = NavLinkMatch.Prefix);
