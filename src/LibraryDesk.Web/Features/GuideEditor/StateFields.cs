namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>One state of a trait as its form posts it.</summary>
public sealed class StateFields
{
    /// <summary>Its id in the guide; made of the words where left empty.</summary>
    public string? Id { get; set; }
    /// <summary>Its words.</summary>
    public string? Name { get; set; }
    /// <summary>A second line.</summary>
    public string? Hint { get; set; }
    /// <summary>Name of a drawing of the desk.</summary>
    public string? Drawing { get; set; }

    /// <summary>True to take it out.</summary>
    public bool Gone { get; set; }
}
