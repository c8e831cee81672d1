namespace LibraryDesk.Lineage;

/// <summary>Why the desk says no. An expected no is a value, not an exception.</summary>
/// <param name="Code">Stable and tested, such as <c>lending.on-hold</c>.</param>
/// <param name="Message">For the person: the rule, and the way on.</param>
public sealed record Refusal(string Code, string Message);
