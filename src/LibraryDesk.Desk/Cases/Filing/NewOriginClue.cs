using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases.Filing;

/// <summary>An origin clue as it came from a form.</summary>
/// <param name="PacketCode">As typed or scanned; null for clues without a packet.</param>
/// <param name="SeedsSown">Seeds sown from the packet; null when not known.</param>
public sealed record NewOriginClue(OriginKind Kind, string? PacketCode = null, int? SeedsSown = null, string? Note = null);
