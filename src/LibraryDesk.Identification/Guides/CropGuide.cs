namespace LibraryDesk.Identification.Guides;

/// <summary>One crop's guide: what a plant can be, what can be looked at, and how often each candidate shows each state.</summary>
/// <param name="Id">Stable id of the crop guide, e.g. <c>capsicum</c>.</param>
/// <param name="Version">Version of the guide; a determined case keeps the version it was judged by.</param>
/// <param name="Crop">Everyday name of the crop.</param>
/// <param name="Genus">Botanical genus, or genera, of the crop.</param>
/// <param name="Stages">Growth stages in growing order.</param>
/// <param name="Parts">Plant parts a look can carry.</param>
/// <param name="Candidates">Species, look-alikes and at most one "something else".</param>
/// <param name="Cells">Published frequencies, one source each. No cell means unknown, never "never".</param>
/// <param name="Counts">Counts from determined or labelled plants, kept apart from the published cells. Empty when none.</param>
/// <param name="Observer">How reliable answers are; null takes <see cref="ObserverReliability.Usual"/>.</param>
/// <param name="Smoothing">Pseudo-count per state where counts stand without a published cell; must be above 0.</param>
/// <param name="Temper">Power the evidence is raised to, above 0 and at most 1. Below 1 where held-out plants showed the traits to repeat each other.</param>
/// <param name="FormSharing">Share of each form's frequencies that is taken from its whole species, 0 to below 1: a variety seldom keeps to its kind in
/// everything. Chosen by the log loss of held-out descriptions.</param>
public sealed record CropGuide(
    string Id,
    string Version,
    string Crop,
    string Genus,
    IReadOnlyList<Source> Sources,
    IReadOnlyList<Stage> Stages,
    IReadOnlyList<Part> Parts,
    IReadOnlyList<Trait> Traits,
    IReadOnlyList<Caution> Cautions,
    IReadOnlyList<Candidate> Candidates,
    IReadOnlyList<Cell> Cells,
    IReadOnlyList<CountRow> Counts,
    ObserverReliability? Observer = null,
    double Smoothing = 0.5,
    double Temper = 1,
    double FormSharing = 0)
{
    /// <summary>The file format this code reads and writes.</summary>
    public const int CurrentFormat = 1;

    /// <summary>How answers on plants of known identity turned out, kept apart from the reliability that the guide states. Empty when none.</summary>
    public IReadOnlyList<AnswerCount> Answers { get; init; } = [];

    /// <summary>True for a guide in other words than it was written in, see <see cref="GuideTranslation"/>: it is for reading and is never stored.</summary>
    public bool IsTranslated { get; init; }

    /// <summary>The trait of that id, or null.</summary>
    public Trait? FindTrait(string id) => Traits.FirstOrDefault(t => t.Id == id);

    /// <summary>The candidate of that id, or null.</summary>
    public Candidate? FindCandidate(string id) => Candidates.FirstOrDefault(c => c.Id == id);

    /// <summary>The source of that id, or null.</summary>
    public Source? FindSource(string id) => Sources.FirstOrDefault(s => s.Id == id);
}

/// <summary>Where a figure or a sentence comes from.</summary>
/// <param name="Licence">Licence or standing of the source; empty when not known.</param>
public sealed record Source(string Id, string Citation, string Licence);

/// <summary>A growth stage; its place in the guide's list is its place in the season.</summary>
public sealed record Stage(string Id, string Name);

/// <summary>A plant part a look can carry, and the stage at which it comes.</summary>
public sealed record Part(string Id, string Name, string Stage);

/// <summary>A warning that stands before a question or a candidate.</summary>
public sealed record Caution(string Id, string Title, string Text, IReadOnlyList<string> Sources);

/// <summary>Answers to one trait on plants of known identity: how many, and how many of them named what was there.</summary>
/// <param name="Sure">As how sure the answers were given.</param>
/// <param name="Right">Answers without a slip, in expectation: 0 to <paramref name="Count"/>.</param>
/// <param name="Count">Answers; 0 or more.</param>
/// <param name="From">Where the plants come from, e.g. <c>determined</c>.</param>
public sealed record AnswerCount(string Trait, Answers.Sureness Sure, double Right, double Count, string From, int Line);

/// <summary>How likely an answer given as sure, fairly sure or faint names the state that was there; each above 0 and at most 1.</summary>
public sealed record ObserverReliability(double Sure, double Fairly, double Faint)
{
    /// <summary>
    /// Answers that a stated value is worth when answers on plants of known identity are added to it. The desk's own setting, no source: after fifty answers
    /// a trait's own record counts as much as what the guide says.
    /// </summary>
    public const double Weight = 50;

    /// <summary>The values of a guide that states none.</summary>
    public static ObserverReliability Usual { get; } = new(0.99, 0.90, 0.75);

    /// <summary>No observer error: what is recorded is what was there.</summary>
    public static ObserverReliability Perfect { get; } = new(1, 1, 1);

    /// <summary>
    /// These values with counts added: the mean of the beta law that has them as its mean and <see cref="Weight"/> answers as its weight, once the counts are seen.
    /// </summary>
    public ObserverReliability With(IReadOnlyList<AnswerCount> counts) => new(
        With(counts, Answers.Sureness.Sure), With(counts, Answers.Sureness.Fairly), With(counts, Answers.Sureness.Faint));

    private double With(IReadOnlyList<AnswerCount> counts, Answers.Sureness sure)
    {
        var (right, all) = (Weight * At(sure), Weight);
        foreach (var count in counts.Where(c => c.Sure == sure)) (right, all) = (right + count.Right, all + count.Count);
        return right / all;
    }

    /// <summary>The value for one degree of sureness.</summary>
    public double At(Answers.Sureness sure) => sure switch
    {
        Answers.Sureness.Sure => Sure,
        Answers.Sureness.Fairly => Fairly,
        _ => Faint,
    };
}
