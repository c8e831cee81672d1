namespace LibraryDesk.Lineage.Keeping;

/// <summary>The constants of the seed viability equation for one species (Ellis &amp; Roberts 1980).</summary>
/// <param name="Species">Scientific name.</param>
/// <param name="Ke">Species constant.</param>
/// <param name="Cw">Effect of moisture.</param>
/// <param name="Ch">Effect of temperature.</param>
/// <param name="Cq">Effect of temperature squared.</param>
/// <param name="Source">Who found them. Where a species has several, the one for the widest conditions is taken.</param>
public sealed record ViabilityConstants(string Species, double Ke, double Cw, double Ch, double Cq, string Source)
{
    /// <summary>Garden species with published constants, as compiled in the viabilitymetrics tables (Aravind et al.) from the papers named. A species that is not here cannot be forecast.</summary>
    public static IReadOnlyList<ViabilityConstants> Published { get; } =
    [
        new("Abelmoschus esculentus", 6.659, 2.448, 0.0329, 0.000478, "Daniel, Kruse & Börner 2013"),
        new("Allium cepa", 6.975, 3.47, 0.04, 0.000428, "Ellis & Roberts 1981"),
        new("Beta vulgaris", 8.943, 4.723, 0.0329, 0.000478, "Ellis, Hong, Roberts & Tao 1990"),
        new("Brassica napus", 7.718, 4.54, 0.0329, 0.000478, "Ellis, Hong & Roberts 1989"),
        new("Capsicum annuum", 7.767, 4.67, 0.0329, 0.000478, "Demir, Kenanoglu, Mavi, Celikkol, Hay & Sariyildiz 2009"),
        new("Citrullus lanatus", 4.86, 1.59, 0.0329, 0.000478, "Demir, Kenanoglu, Hay, Mavi & Celikkol 2011"),
        new("Cucumis melo", 6.11, 2.59, 0.0329, 0.000478, "Demir, Kenanoglu, Hay, Mavi & Celikkol 2011"),
        new("Cucumis sativus", 5.35, 2.03, 0.0329, 0.000478, "Demir, Kenanoglu, Hay, Mavi & Celikkol 2011"),
        new("Cucurbita pepo", 6.913, 3.604, 0.04, 0.0004, "Hong, Linington & Ellis 1996"),
        new("Phaseolus vulgaris", 9.09, 4.761, 0.0329, 0.000478, "Ellis, Hong, Roberts & Tao 1990"),
        new("Pisum sativum", 9.858, 5.39, 0.0329, 0.000478, "Ellis, Hong & Roberts 1989"),
        new("Solanum melongena", 5.166, 3.009, 0.094, 0.0019, "Daniel, Kruse & Börner 2011"),
        new("Vigna radiata", 10.858, 6.27, 0.0329, 0.000478, "Ellis, Hong & Roberts 1989"),
        new("Vigna unguiculata", 9.401, 5.118, 0.0329, 0.000478, "Ellis, Osei-Bonsu & Roberts 1982"),
        new("Zea mays", 8.579, 4.91, 0.0329, 0.000478, "Hong, Linington & Ellis 1996"),
    ];

    /// <summary>The constants of a species by scientific name, capitals forgiven; null when none are published here.</summary>
    public static ViabilityConstants? For(string? species) =>
        Published.FirstOrDefault(constants => string.Equals(constants.Species, species, StringComparison.OrdinalIgnoreCase));
}
