using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace LibraryDesk.Lineage.Codes;

/// <summary>The code of a lot as people read it, such as L26-031: L, the year, and a running number within the year.</summary>
[JsonConverter(typeof(CodeConverter<LotCode>))]
public readonly record struct LotCode : ICode<LotCode>
{
    /// <param name="year">2000 to 2099.</param>
    /// <param name="number">1 or more, running within the year.</param>
    public LotCode(int year, int number)
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
    public static Outcome<LotCode> Read(string? typed) =>
        RunningCode.Read('L', Sentence.Of($"lot"), "L26-031", typed).Then<LotCode>(read => new LotCode(read.Year, read.Number));

    /// <summary>Reads a code, as <see cref="Read"/> does.</summary>
    public static bool TryParse([NotNullWhen(true)] string? typed, out LotCode code, [NotNullWhen(false)] out Refusal? refusal) =>
        Read(typed).TryGet(out code, out refusal);

    /// <summary>As printed: L26-031.</summary>
    public override string ToString() => RunningCode.Write('L', Year, Number);
}
