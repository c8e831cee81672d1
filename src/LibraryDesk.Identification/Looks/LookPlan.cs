using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Looks;

/// <summary>What to look at next.</summary>
/// <param name="Now">Looks that the parts present allow, best first.</param>
/// <param name="WorthWaitingFor">Looks at parts the plant does not carry now, best first.</param>
public sealed record LookPlan(IReadOnlyList<NextLook> Now, IReadOnlyList<NextLook> WorthWaitingFor);

/// <summary>One look that could be taken.</summary>
/// <param name="Trait">Trait id.</param>
/// <param name="Part">Id of the plant part needed.</param>
/// <param name="Minutes">How long it takes, in minutes.</param>
/// <param name="Bits">Expected drop of what is open between candidates and packets, in bits; never negative, never above that.</param>
/// <param name="BitsPerEffort">The same per minute of looking; touching counts a quarter more, cutting open twice.</param>
/// <param name="IsSecondLook">True where the trait was answered, but not surely or not in agreement.</param>
/// <param name="Outlooks">What may be answered, and what each answer would give.</param>
public sealed record NextLook(
    string Trait,
    string Name,
    string Question,
    string Part,
    Effort Effort,
    double Minutes,
    double Bits,
    double BitsPerEffort,
    bool IsSecondLook,
    IReadOnlyList<AnswerOutlook> Outlooks);

/// <summary>One possible answer and what would follow.</summary>
/// <param name="State">State id; null for a measured trait.</param>
/// <param name="Label">State name, or the band with its unit.</param>
/// <param name="Low">Lower end of a measured band, null when open.</param>
/// <param name="High">Upper end of a measured band, null when open.</param>
/// <param name="Probability">How likely this answer is, 0 to 1.</param>
/// <param name="Leader">Candidate id that would lead after it.</param>
/// <param name="LeaderProbability">The leader's probability then.</param>
public sealed record AnswerOutlook(string? State, string Label, double? Low, double? High, double Probability, string Leader, double LeaderProbability);
