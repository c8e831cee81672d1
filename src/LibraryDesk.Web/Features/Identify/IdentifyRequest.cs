using System.Text.Json;

namespace LibraryDesk.Web.Features.Identify;

/// <summary>Answers to be ranked. Nothing of it is kept.</summary>
/// <param name="Guide">Crop guide, e.g. <c>capsicum</c>.</param>
/// <param name="Case">A name that comes back with the answer; empty when left out.</param>
/// <param name="Answers">Rows as in an answer file; rows of one trait, person and look mean "either of these".</param>
/// <param name="Among">Candidate ids to rank among; null for all.</param>
/// <param name="Prior"><c>guide</c> (the usual) or <c>flat</c>.</param>
/// <param name="Parts">Ids of the parts the plant carries now; null takes all as present. Looks at other parts are listed as worth waiting for.</param>
/// <param name="Version">Version of the guide; null takes the current one.</param>
public sealed record IdentifyRequest(
    string Guide,
    IReadOnlyList<IdentifyAnswer?> Answers,
    string? Case = null,
    IReadOnlyList<string>? Among = null,
    string? Prior = null,
    IReadOnlyList<string>? Parts = null,
    string? Version = null);

/// <summary>One answered trait.</summary>
/// <param name="Trait">Trait id of the guide.</param>
/// <param name="State">State id; null for a measured trait.</param>
/// <param name="Value">For a measured trait: a number in its unit, or a range such as <c>"12..15"</c>.</param>
/// <param name="Sure">sure (the usual), fairly or faint.</param>
/// <param name="Person">Who answered; people at one look share what was there to be seen.</param>
/// <param name="Look">Which look.</param>
public sealed record IdentifyAnswer(
    string Trait, string? State = null, JsonElement? Value = null, string? Sure = null, string? Person = null, string? Look = null);
