namespace LibraryDesk.Web.Shared.Forms;

/// <summary>What ties an input to its label, hint and error. Splat <see cref="Attributes"/> onto the input.</summary>
/// <param name="Id">The input's id.</param>
/// <param name="DescribedBy">Ids of the hint and the error, or null when there is neither.</param>
/// <param name="Invalid">True when the input was refused.</param>
/// <param name="Required">True when an answer is needed.</param>
public sealed record FieldWiring(string Id, string? DescribedBy, bool Invalid, bool Required)
{
    /// <summary>The id and the ARIA attributes, as the input needs them.</summary>
    public IReadOnlyDictionary<string, object> Attributes
    {
        get
        {
            var attributes = new Dictionary<string, object> { ["id"] = Id };
            if (DescribedBy is not null) attributes["aria-describedby"] = DescribedBy;
            if (Invalid) attributes["aria-invalid"] = "true";
            if (Required) attributes["aria-required"] = "true";
            return attributes;
        }
    }

    /// <summary>Wires an input by id: the hint is <c>id-hint</c>, the error <c>id-error</c>.</summary>
    public static FieldWiring For(string id, string? hint, string? error, bool required)
    {
        var described = string.Join(' ', new[] { hint is null ? null : $"{id}-hint", error is null ? null : $"{id}-error" }.Where(part => part is not null));
        return new(id, described.Length == 0 ? null : described, error is not null, required);
    }
}
