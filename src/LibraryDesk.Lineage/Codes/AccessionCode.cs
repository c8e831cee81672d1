using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace LibraryDesk.Lineage.Codes;

/// <summary>The code of an accession as people read it, such as A26-007: A, the year, and a running number within the year.</summary>
[JsonConverter(typeof(CodeConverter<AccessionCode>))]
public readonly record struct AccessionCode : ICode<AccessionCode>
{
    /// <param name="year">2000 to 2099.</param>
    /// <param name="number">1 or more, running within the year.</param>
    public AccessionCode(int year, int number)
    {
        RunningCode.Check(year, number);
        Year = year;
        Number = number;
    }

    /// <summary>The most characters a written code has.</summary>
    public const int Length = 11;

    /// <summary>The year, 2000 to 2099.</summary>
    public int Year { get; }

    /// <summary>The running number within the year.</summary>
    public int Number { get; }

    /// <summary>Reads what a person typed. Lower case, spaces and missing hyphens are forgiven; the refusal says what is wrong.</summary>
    public static Outcome<AccessionCode> Read(string? typed) =>
        RunningCode.Read('A', Sentence.Of($"accession"), "A26-007", typed).Then<AccessionCode>(read => new AccessionCode(read.Year, read.Number));

    /// <summary>Reads a code, as <see cref="Read"/> does.</summary>
    public static bool TryParse([NotNullWhen(true)] string? typed, out AccessionCode code, [NotNullWhen(false)] out Refusal? refusal) =>
        Read(typed).TryGet(out code, out refusal);

    /// <summary>As printed: A26-007.</summary>
    public override string ToString() => RunningCode.Write('A', Year, Number);
}
