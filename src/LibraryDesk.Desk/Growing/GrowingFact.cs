namespace LibraryDesk.Desk.Growing;

/// <summary>One figure or statement about growing a crop or saving its seed, as one source gives it. Nothing here is averaged over sources.</summary>
/// <param name="Taxon">Species ("capsicum-annuum"), genus ("capsicum") or "all".</param>
/// <param name="Topic">Topic id, such as "sowing_depth_mm"; see <see cref="GrowingTopic"/>.</param>
/// <param name="Kind">The kind the figure holds for ("sweet", "hot"); null for all kinds of the taxon.</param>
/// <param name="Low">Lower figure in <paramref name="Unit"/>; null when there is no number.</param>
/// <param name="High">Upper figure in <paramref name="Unit"/>; equal to <paramref name="Low"/> for a single figure; null when there is no number.</param>
/// <param name="Unit">Unit of the figures ("mm", "days", "°C"); null when there is no number.</param>
/// <param name="Term">The one-word answer of a topic without figures ("annual", "ferment"); null when the statement says it all.</param>
/// <param name="Statement">What the figure rests on or adds; null when the source says no more.</param>
/// <param name="Basis">How the source was had: "read", "read (abstract)", "read second hand", "computed", "common practice" or "from memory".</param>
/// <param name="Source">Where it comes from, in words a reader can look up.</param>
public sealed record GrowingFact(
    string Taxon,
    string Topic,
    string? Kind,
    double? Low,
    double? High,
    string? Unit,
    string? Term,
    string? Statement,
    string Basis,
    string Source)
{
    /// <summary>The figure as shown on a packet page, in the reader's language; see <see cref="GrowingWords.Figure"/>.</summary>
    public string? Figure => GrowingWords.Figure(this);
}
