using Microsoft.AspNetCore.Antiforgery;

namespace LibraryDesk.Web.Shared.Forms;

/// <summary>The longer texts of a form that could not be taken, so that they can be shown and copied.</summary>
internal static class WrittenWords
{
    /// <summary>The name under which every text area posts its own name, to be told from passwords and ids.</summary>
    public const string Mark = "_words";

    /// <summary>
    /// What was written into the text areas of the posted form. Empty for what another site sent: it would speak in the desk's name.
    /// </summary>
    public static IReadOnlyList<string> In(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Headers.Origin != $"{request.Scheme}://{request.Host}") return [];
        // A form whose token is another's may not be read any more; here nothing is done with it but to show it to whom it came from.
        request.HttpContext.Features.Set<IAntiforgeryValidationFeature>(null);
        if (!request.HasFormContentType) return [];
        var form = request.Form;
        return [.. form[Mark].OfType<string>().Select(name => form[name].ToString()).Where(words => !string.IsNullOrWhiteSpace(words)).Distinct()];
    }
}
