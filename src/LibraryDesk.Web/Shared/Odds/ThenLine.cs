namespace LibraryDesk.Web.Shared.Odds;

/// <summary>What one possible answer would do to the odds.</summary>
/// <param name="Answer">The answer, e.g. "yellow".</param>
/// <param name="Candidate">The candidate that would lead then.</param>
/// <param name="InTwenty">Its odds then, out of twenty.</param>
/// <param name="Scientific">True when the candidate is a Latin name.</param>
/// <param name="Words">Words for the odds that differ from the usual; null for the usual.</param>
public sealed record ThenLine(string Answer, string Candidate, int InTwenty, bool Scientific = true, string? Words = null);
