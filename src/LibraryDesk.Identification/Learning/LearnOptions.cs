namespace LibraryDesk.Identification.Learning;

/// <summary>How a guide is learned from labelled plants.</summary>
/// <param name="Id">Id of the new guide.</param>
/// <param name="Version">Its version.</param>
/// <param name="Crop">Its crop; the genus is taken from the taxa.</param>
/// <param name="Smoothing">Pseudo-count per state, above 0; null chooses it on held-out parts of the plants.</param>
/// <param name="IsUnseenSmoothed">False leaves a trait that no plant of a taxon was scored for unknown, and so neutral. True gives every state the same
/// share there, as plain naive Bayes does.</param>
/// <param name="Temper">Power the evidence is raised to; null chooses it on held-out parts of the plants.</param>
/// <param name="IsPriorFlat">True makes all taxa alike; false takes (plants + 1) / (all plants + taxa).</param>
/// <param name="DistinctForMeasured">Numbers with more distinct values than this are measured; with fewer they are states.</param>
public sealed record LearnOptions(
    string Id,
    string Version,
    string Crop,
    double? Smoothing = null,
    bool IsUnseenSmoothed = false,
    double? Temper = null,
    bool IsPriorFlat = false,
    int DistinctForMeasured = 10);
