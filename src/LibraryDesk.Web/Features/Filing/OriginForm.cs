namespace LibraryDesk.Web.Features.Filing;

/// <summary>Origin clues as ticked and typed; kept as typed, so that a refusal loses nothing.</summary>
internal sealed class OriginForm
{
    /// <summary>Codes of ticked loans.</summary>
    public List<string>? Loans { get; set; }

    /// <summary>Ticked kinds without a packet.</summary>
    public List<string>? Others { get; set; }

    public string? Code { get; set; }

    public string? Note { get; set; }

    /// <summary>file or keep.</summary>
    public string? Then { get; set; }
}
