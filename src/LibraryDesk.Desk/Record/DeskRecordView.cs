using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Identification.Record;

namespace LibraryDesk.Desk.Record;

/// <summary>How true the desk's odds were, and how long people waited.</summary>
/// <param name="Filed">Cases filed, drafts left out.</param>
/// <param name="Determined">Cases that stand determined.</param>
/// <param name="Judged">Determined cases whose truth does not lean on the odds that were shown.</param>
/// <param name="Record">Null while no case can be judged.</param>
/// <param name="Parts">The Brier score of "the leader is right" taken apart, on odds as they are shown, in twentieths; null while no case can be judged.</param>
/// <param name="BySpecies">Judged cases by what they were.</param>
/// <param name="ByStage">Judged cases by the furthest stage a look saw, in the order of the season.</param>
/// <param name="Waits">How long people waited, step by step; steps that nobody went through are left out.</param>
/// <param name="Misses">Judged cases where another candidate stood first, newest first, at most ten.</param>
public sealed record DeskRecordView(
    int Filed,
    int Determined,
    int Judged,
    DeskRecord? Record,
    MurphyDecomposition? Parts,
    IReadOnlyList<SpeciesRecord> BySpecies,
    IReadOnlyList<StageRecord> ByStage,
    IReadOnlyList<Wait> Waits,
    IReadOnlyList<Miss> Misses);

/// <param name="Taxon">Candidate id.</param>
/// <param name="Name">Its name in the guide.</param>
/// <param name="StoodFirst">Cases in which it stood first in the odds.</param>
/// <param name="GivenToTruth">Mean probability that the odds gave to what it was, 0 to 1.</param>
public sealed record SpeciesRecord(string Taxon, string Name, int Cases, int StoodFirst, double GivenToTruth);

/// <param name="Stage">Name of the stage.</param>
/// <param name="StoodFirst">Cases in which what it was stood first in the odds.</param>
/// <param name="GivenToTruth">Mean probability that the odds gave to what it was, 0 to 1.</param>
public sealed record StageRecord(string Stage, int Cases, int StoodFirst, double GivenToTruth);

/// <summary>A step that people wait for.</summary>
public enum WaitStep
{
    /// <summary>From filing to the first sealed opinion.</summary>
    FirstOpinion,

    /// <summary>From filing to the determination.</summary>
    Determination,

    /// <summary>From a volunteer's asking for a look to the look.</summary>
    Look,
}

/// <param name="Times">How many times it was waited for.</param>
/// <param name="MedianDays">Half waited no longer.</param>
/// <param name="MostDays">Nine in ten waited no longer.</param>
public sealed record Wait(WaitStep Step, int Times, double MedianDays, double MostDays);

/// <param name="Said">What stood first.</param>
/// <param name="Odds">Its odds as they were shown.</param>
/// <param name="Was">What it was determined as.</param>
public sealed record Miss(string Said, OddsThen.Entry Odds, string Was);
