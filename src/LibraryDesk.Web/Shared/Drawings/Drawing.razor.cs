using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Shared.Drawings;

public sealed partial class Drawing
{
    private MarkupString _svg;

    /// <summary>Name of the drawing, such as "corolla-spots". Null, empty or unknown shows nothing.</summary>
    [Parameter, EditorRequired] public string? Name { get; set; }

    /// <summary>What the drawing shows, for people who cannot see it; null where the words beside it say it already.</summary>
    [Parameter] public string? Label { get; set; }

    /// <summary>Style classes of the drawing.</summary>
    [Parameter] public string Class { get; set; } = "draw";

    [Inject] private ILogger<Drawing> Log { get; set; } = default!;

    protected override void OnParametersSet()
    {
        _svg = default;
        if (string.IsNullOrEmpty(Name)) return;
        var svg = LineDrawings.Find(Name);
        if (svg is null)
        {
            LogUnknown(Log, Name);
            return;
        }

        var encode = HtmlEncoder.Default;
        var spoken = string.IsNullOrEmpty(Label) ? "aria-hidden=\"true\" focusable=\"false\"" : $"role=\"img\" aria-label=\"{encode.Encode(Label)}\"";
        _svg = new MarkupString(svg.Insert("<svg".Length, $" class=\"{encode.Encode(Class)}\" {spoken}"));
    }

    [LoggerMessage(LogLevel.Warning, "There is no drawing called {Name}")]
    private static partial void LogUnknown(ILogger log, string name);
}
