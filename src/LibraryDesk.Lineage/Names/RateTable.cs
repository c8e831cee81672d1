namespace LibraryDesk.Lineage.Names;

/// <summary>One rate that the name confidence and the mix-up finder reckon with.</summary>
/// <param name="Id">Stable, such as <c>donor-wrong</c>.</param>
/// <param name="Value">A probability or a share, 0 to 1; for <c>purity-weight</c> a number of plants.</param>
/// <param name="Meaning">In one sentence, for the screen.</param>
/// <param name="Source">Where it comes from, or "the library's own setting".</param>
public sealed record Rate(string Id, double Value, string Meaning, string Source);

/// <summary>The one table of rates. A library may set its own; each figure says where it comes from.</summary>
public sealed class RateTable
{
    public const string OwnSetting = "the library's own setting";
    public const string DonorWrong = "donor-wrong";
    public const string LabelWrong = "label-wrong";
    public const string TradeWrong = "trade-wrong";
    public const string LibraryWrong = "library-wrong";
    public const string UnknownWrong = "unknown-wrong";
    public const string DonorMixed = "donor-mixed";
    public const string PackingSwap = "packing-swap";
    public const string GrowOutSwap = "grow-out-swap";
    public const string GrowOutCrossed = "grow-out-crossed";
    public const string LabelLost = "label-lost";
    public const string StartPurity = "start-purity";
    public const string PurityWeight = "purity-weight";
    public const string RogueDetection = "rogue-detection";
    public const string OutcrossOpen = "outcross-open";
    public const string OutcrossDistance = "outcross-distance";
    public const string OutcrossTime = "outcross-time";
    public const string OutcrossCaged = "outcross-caged";
    public const string OutcrossBagged = "outcross-bagged";
    public const string OutcrossHand = "outcross-hand";
    public const string HybridOff = "hybrid-off";
    public const string FitsAnyway = "fits-anyway";
    public const string TestSlip = "test-slip";

    private readonly Dictionary<string, Rate> _rates;

    /// <param name="rates">All rates, each id once.</param>
    public RateTable(IEnumerable<Rate> rates)
    {
        ArgumentNullException.ThrowIfNull(rates);
        _rates = rates.ToDictionary(rate => rate.Id, StringComparer.Ordinal);
        foreach (var rate in Standard is null ? [] : Standard.Rates)
        {
            if (!_rates.ContainsKey(rate.Id)) throw new ArgumentException($"The rate {rate.Id} is missing.", nameof(rates));
        }

        foreach (var rate in _rates.Values)
        {
            if (rate.Id != PurityWeight && rate.Value is not (>= 0 and <= 1)) throw new ArgumentException($"The rate {rate.Id} is a share from 0 to 1.", nameof(rates));
            if (rate.Value is not >= 0) throw new ArgumentException($"The rate {rate.Id} is not below 0.", nameof(rates));
        }
    }

    /// <summary>The rates a new library starts with.</summary>
    public static RateTable Standard { get; } = new(
    [
        new(DonorWrong, 0.03, "The name that a donor gives is of another variety.", OwnSetting),
        new(LabelWrong, 0.15, "A label with nobody behind it, as on a swap table, is of another variety.", OwnSetting),
        new(TradeWrong, 0.02, "A packet from the trade is of another variety than it says.", OwnSetting),
        new(LibraryWrong, 0.03, "Seed from another library is of another variety than it says.", OwnSetting),
        new(UnknownWrong, 0.30, "A name that nobody can account for is of another variety.", OwnSetting),
        new(DonorMixed, 0.04, "Seed as it came in is a hybrid's, or mixed, and does not come up all alike.", OwnSetting),
        new(PackingSwap, 0.01, "At one packing, some labels are swapped.", OwnSetting),
        new(GrowOutSwap, 0.01, "At one grow-out, the plants are not of the seed they are taken for.", OwnSetting),
        new(GrowOutCrossed, 0.05, "At one grow-out that was not isolated, enough crossing happens to show.", OwnSetting),
        new(LabelLost, 0.05, "A borrower's own label is lost or mixed up, so that the plant is not of the packet.", OwnSetting),
        new(StartPurity, 0.98, "The share of seeds true to name in seed as it comes in, when the name is right.", OwnSetting),
        new(PurityWeight, 20, "How many plants that first guess at purity is worth.", OwnSetting),
        new(RogueDetection, 0.7, "The share of off-types that somebody who takes them out does find.", OwnSetting),
        new(OutcrossOpen, 0.10, "Seed that crosses with another variety in flower nearby, when nothing is done against it. In peppers 2 to 90 % was measured (OECD 2006, from memory); the crop guide's figure stands in where there is one.", OwnSetting),
        new(OutcrossDistance, 0.02, "The same, with distance for isolation.", OwnSetting),
        new(OutcrossTime, 0.02, "The same, with flowering at another time.", OwnSetting),
        new(OutcrossCaged, 0.005, "The same, under a cage or net.", OwnSetting),
        new(OutcrossBagged, 0.005, "The same, with flowers in bags.", OwnSetting),
        new(OutcrossHand, 0.002, "The same, pollinated by hand with flowers kept shut.", OwnSetting),
        new(HybridOff, 0.5, "The share of seed saved from a first-generation hybrid that does not come up like it: where one gene with dominance decides, a quarter; where several do, nearly all.", OwnSetting),
        new(FitsAnyway, 0.2, "A plant of another variety that still fits the name, because many look alike.", OwnSetting),
        new(TestSlip, 0.05, "A plant that was grown as a check is judged wrongly.", OwnSetting),
    ]);

    /// <summary>All rates, for the screen that opens them.</summary>
    public IReadOnlyCollection<Rate> Rates => _rates.Values;

    /// <summary>The rate of an id.</summary>
    public Rate this[string id] => _rates[id];

    /// <summary>The same table with one rate set anew.</summary>
    public RateTable With(string id, double value, string source) =>
        new(_rates.Values.Select(rate => rate.Id == id ? rate with { Value = value, Source = source } : rate));
}
