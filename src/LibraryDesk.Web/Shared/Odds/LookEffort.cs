namespace LibraryDesk.Web.Shared.Odds;

/// <summary>What a look asks of the person and the plant.</summary>
public enum LookEffort
{
    /// <summary>Eyes only.</summary>
    Look,
    /// <summary>The plant is touched or turned.</summary>
    Touch,
    /// <summary>Something is cut open; gloves where fruit may be hot.</summary>
    CutOpen,
}
