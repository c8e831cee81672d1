using LibraryDesk.Identification.Record;

namespace LibraryDesk.Desk.Record;

/// <summary>How true the desk's odds were, and how long people waited.</summary>
/// <param name="Filed">Cases filed, drafts left out.</param>
/// <param name="Determined">Cases that stand determined.</param>
/// <param name="Judged">Determined cases whose truth does not lean on the odds that were shown.</param>
/// <param name="Record">Null while no case can be judged.</param>
/// <param name="BySpecies">Judged cases by what they were.</param>
/// <param name="MedianDays">Median days from filing to determination; null while none is determined.</param>
/// <param name="Misses">Judged cases where another candidate stood first, newest first, at most ten.</param>
public sealed record DeskRecordView(
    int Filed,
    int Determined,
    int Judged,
    DeskRecord? Record,
    IReadOnlyList<SpeciesRecord> BySpecies,
    double? MedianDays,
    IReadOnlyList<Miss> Misses);

/// <param name="Taxon">Candidate id.</param>
/// <param name="Name">Its name in the guide.</param>
/// <param name="StoodFirst">Cases in which it stood first in the odds.</param>
public sealed record SpeciesRecord(string Taxon, string Name, int Cases, int StoodFirst);

/// <param name="Said">What stood first.</param>
/// <param name="SaidOdds">Its odds as they were shown.</param>
/// <param name="Was">What it was determined as.</param>
public sealed record Miss(string Said, string SaidOdds, string Was);
