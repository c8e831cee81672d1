using LibraryDesk.Identification.Answers;

namespace LibraryDesk.Cli.Identify;

/// <summary>One row of an answer file.</summary>
/// <param name="Row">Line of the file, the header being 1.</param>
internal readonly record struct AnswerRow(int Row, string Case, string Trait, string State, Sureness Sure, string Person, string Look);

/// <summary>The rows of one case.</summary>
internal sealed record AnswerCase(string Case, List<AnswerRow> Rows);

/// <summary>Some cases that stand one after another, with what could not be read between them.</summary>
internal sealed record AnswerBatch(IReadOnlyList<AnswerCase> Cases, IReadOnlyList<RowFault> Faults);
