using LibraryDesk.Web.Shared.Marks;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.Filing;

/// <summary>Drawings as parts of a page, for where there may be none.</summary>
internal static class Drawings
{
    public static RenderFragment Named(string name) => builder =>
    {
        builder.OpenComponent<Drawing>(0);
        builder.AddComponentParameter(1, nameof(Drawing.Name), name);
        builder.CloseComponent();
    };
}
