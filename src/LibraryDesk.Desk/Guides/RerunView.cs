using LibraryDesk.Identification.Learning;

namespace LibraryDesk.Desk.Guides;

/// <summary>How far a re-run is, and what it came to.</summary>
/// <param name="Id">Posted back to publish what was seen.</param>
/// <param name="Done">Cases re-run so far, of <paramref name="Of"/>.</param>
/// <param name="IsStopped">True where it was cut off, as by a restart of the server; it can be run again.</param>
/// <param name="IsCurrent">False where the draft, the version in use or the cases changed since.</param>
/// <param name="Result">Null until it is finished, and where only the progress was asked for.</param>
/// <param name="HasFailed">True where it ended by a fault of the desk, which is in the server's log; it can be run again.</param>
public sealed record RerunView(long Id, string BeforeVersion, int Done, int Of, bool IsStopped, bool IsCurrent, GuideRerun? Result, bool IsFinished, bool HasFailed);
