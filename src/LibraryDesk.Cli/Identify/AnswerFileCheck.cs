using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Cli.Identify;

/// <summary>Goes through a whole answer file before anything is printed, so that a fault in the last row prints nothing at all.</summary>
internal static class AnswerFileCheck
{
    private const int MostFaults = 20;

    /// <summary>The faults found, one message each, naming their rows; a last line says so where more were left out.</summary>
    public static async Task<List<string>> FaultsAsync(CompiledGuide guide, AnswerFile file, CancellationToken stop)
    {
        file.IsScattered = false;
        var faults = await ReadAsync(guide, file, watchNames: true, stop);
        // Cases that stand apart are judged once more as wholes: half a case can be right where the whole contradicts itself.
        if (file.IsScattered) faults = await ReadAsync(guide, file, watchNames: false, stop);
        var lines = faults.OrderBy(f => f.Row).Take(MostFaults).Select(f => f.ToString()).ToList();
        if (faults.Count > MostFaults) lines.Add("more faults follow; mend these first");
        return lines;
    }

    private static async Task<List<RowFault>> ReadAsync(CompiledGuide guide, AnswerFile file, bool watchNames, CancellationToken stop)
    {
        var faults = new List<RowFault>();
        var batches = watchNames ? WatchNames(file) : file.Batches();
        await foreach (var found in OrderedBatches.RunAsync(batches, batch => FaultsOf(guide, batch), stop))
        {
            faults.AddRange(found);
            if (faults.Count > MostFaults) break;
        }

        return faults;
    }

    private static IEnumerable<AnswerBatch> WatchNames(AnswerFile file)
    {
        var seen = new HashSet<(int, int)>();
        foreach (var batch in file.Batches())
        {
            foreach (var one in batch.Cases)
            {
                // Two hashes instead of the name: a hundred thousand cases take little room, and a false hit only costs memory.
                if (!seen.Add((one.Case.GetHashCode(StringComparison.Ordinal), Mixed(one.Case)))) file.IsScattered = true;
            }

            yield return batch;
            if (file.IsScattered) yield break;
        }
    }

    private static List<RowFault> FaultsOf(CompiledGuide guide, AnswerBatch batch)
    {
        var faults = new List<RowFault>(batch.Faults);
        foreach (var one in batch.Cases)
        {
            if (CaseAnswers.Of(guide, one, faults.Add) is not { } answers) continue;
            foreach (var fault in Evidence.FaultsOf(guide, answers)) faults.Add(new RowFault(RowOf(one, fault), $"case {one.Case}: {fault.Message}"));
        }

        return faults;
    }

    /// <summary>The very row that holds the unknown state, where several rows were joined to one answer.</summary>
    private static int RowOf(AnswerCase one, EvidenceFault fault)
    {
        foreach (var row in one.Rows)
        {
            if (row.Row >= fault.Row && row.Trait == fault.Trait && fault.Message.Contains($"\"{row.State}\"", StringComparison.Ordinal) && row.State.Length > 0) return row.Row;
        }

        return fault.Row;
    }

    private static int Mixed(string text)
    {
        var hash = 17;
        foreach (var c in text) hash = (hash * 16777619) ^ c;
        return hash;
    }
}
