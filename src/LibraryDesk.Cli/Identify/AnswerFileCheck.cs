using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Cli.Identify;

/// <summary>Goes through a whole answer file before anything is printed, so that a fault in the last row prints nothing at all.</summary>
internal static class AnswerFileCheck
{
    private const int MostFaults = 20;

    /// <summary>The faults found, one message each, naming their rows; a last line says so where more were left out.</summary>
    public static List<string> Faults(CompiledGuide guide, AnswerFile file)
    {
        var faults = new List<string>();
        var seen = new HashSet<(int, int)>();
        foreach (var one in file.Cases(faults.Add))
        {
            // Two hashes instead of the name: a hundred thousand cases take little room, and a false hit only costs memory.
            if (!seen.Add((one.Case.GetHashCode(StringComparison.Ordinal), Mixed(one.Case)))) file.IsScattered = true;
            Check(guide, one, faults);
            if (faults.Count > MostFaults) break;
        }

        if (file.IsScattered && faults.Count == 0) CheckJoined(guide, file, faults);
        if (faults.Count > MostFaults) faults[^1] = "more faults follow; mend these first";
        return faults;
    }

    private static void Check(CompiledGuide guide, AnswerCase one, List<string> faults)
    {
        if (CaseAnswers.Of(guide, one, faults.Add) is not { } answers) return;
        foreach (var fault in Evidence.FaultsOf(guide, answers)) faults.Add(RowOf(one, fault) is { } row ? $"row {row}: case {one.Case}: {fault.Message}" : fault.ToString());
    }

    /// <summary>The very row that holds the unknown state, where several rows were joined to one answer.</summary>
    private static int? RowOf(AnswerCase one, EvidenceFault fault)
    {
        foreach (var row in one.Rows)
        {
            if (row.Row >= fault.Row && row.Trait == fault.Trait && fault.Message.Contains($"\"{row.State}\"", StringComparison.Ordinal) && row.State.Length > 0) return row.Row;
        }

        return fault.Row;
    }

    private static void CheckJoined(CompiledGuide guide, AnswerFile file, List<string> faults)
    {
        foreach (var one in file.Cases(_ => { }))
        {
            Check(guide, one, faults);
            if (faults.Count > MostFaults) return;
        }
    }

    private static int Mixed(string text)
    {
        var hash = 17;
        foreach (var c in text) hash = (hash * 16777619) ^ c;
        return hash;
    }
}
