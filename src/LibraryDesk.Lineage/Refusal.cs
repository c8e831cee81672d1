namespace LibraryDesk.Lineage;

/// <summary>Why the desk says no. An expected no is a value, not an exception.</summary>
/// <param name="Code">Stable and tested, such as <c>lending.on-hold</c>.</param>
/// <param name="Message">For the person: the rule, and the way on; in English.</param>
public sealed record Refusal(string Code, string Message)
{
    /// <summary>A no whose message has values in it.</summary>
    public Refusal(string code, Sentence message)
        : this(code, (message ?? throw new ArgumentNullException(nameof(message))).ToString()) => Sentence = message;

    /// <summary>The message with its values apart; null where it has none.</summary>
    public Sentence? Sentence { get; }

    /// <summary>True for a question rather than a rule: said once more, with the word that it is meant, it is taken.</summary>
    public bool MayInsist { get; init; }

    /// <summary>The message, to stand as a value in another one.</summary>
    public Sentence Words => Sentence ?? Sentence.Plain(Message);
}
