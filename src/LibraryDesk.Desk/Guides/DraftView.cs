using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Desk.Guides;

/// <summary>A draft as librarians see it.</summary>
/// <param name="BaseVersion">The version that the changes are made to.</param>
/// <param name="CurrentVersion">The version in use.</param>
/// <param name="Revision">Posted back with every change.</param>
/// <param name="Learns">Whether the next version will carry counts of determined plants.</param>
/// <param name="Guide">The guide with all changes, under the number it would be published by; it may have faults.</param>
/// <param name="Edits">Changes that stand, in order.</param>
/// <param name="Undone">Changes that can be put back.</param>
/// <param name="Faults">What the validator finds; empty when it could be published.</param>
/// <param name="Names">Names of the librarians who changed it.</param>
public sealed record DraftView(
    string GuideId,
    string BaseVersion,
    string CurrentVersion,
    long Revision,
    bool Learns,
    CropGuide Guide,
    IReadOnlyList<DraftEdit> Edits,
    int Undone,
    IReadOnlyList<PlacedFault> Faults,
    IReadOnlyDictionary<Guid, string> Names,
    DateTimeOffset ChangedAt);
