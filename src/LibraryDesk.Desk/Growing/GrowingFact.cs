using System.Globalization;

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
    /// <summary>The figure as shown on a packet page, such as "6 mm" or "2 to 4 years"; the term where there is no figure; null where there is neither.</summary>
    public string? Figure
    {
        get
        {
            if (Low is null && High is null) return Term;
            var figure = (Low, High) switch
            {
                ({ } low, { } high) when low == high => Text(low),
                ({ } low, { } high) => $"{Text(low)} to {Text(high)}",
                ({ } low, null) => $"at least {Text(low)}",
                (null, { } high) => $"up to {Text(high)}",
                _ => "",
            };
            return Unit is null ? figure : $"{figure} {Unit}";
        }
    }

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
