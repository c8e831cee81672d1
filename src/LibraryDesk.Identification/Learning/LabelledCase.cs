namespace LibraryDesk.Identification.Learning;

/// <summary>A plant of known identity with what was scored on it.</summary>
/// <param name="Taxon">Candidate id or name.</param>
/// <param name="Scores">Trait scores; several of one trait mean that the plant, or its seed lot, showed several states.</param>
public sealed record LabelledCase(string Case, string Taxon, IReadOnlyList<LabelledScore> Scores);

/// <summary>One score.</summary>
/// <param name="State">State id, or a number for a measured trait.</param>
/// <param name="Row">Row of the sheet it stands on, 1-based; 0 when not from a sheet.</param>
public readonly record struct LabelledScore(string Trait, string State, int Row = 0);
