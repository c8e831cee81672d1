using System.Buffers;
using System.Collections.Concurrent;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Cli.Identify;

/// <summary>Ranks the cases of a file on all cores and writes them in the order of the file, with a bounded number of cases in hand.</summary>
internal static class BatchIdentifier
{
    public static async Task RunAsync(CompiledGuide guide, Prior prior, IReadOnlySet<string>? parts, AnswerFile file, Stream output, CancellationToken stop)
    {
        var fragments = new JsonFragments(guide.Guide);
        // Buffers go round between the workers and the writer: a fresh one for each batch would be a large object each time.
        var buffers = new ConcurrentBag<ArrayBufferWriter<byte>>();
        ArrayBufferWriter<byte> Rank(AnswerBatch batch)
        {
            var buffer = buffers.TryTake(out var used) ? used : new ArrayBufferWriter<byte>(256 * 1024);
            var line = new CaseLine(buffer, fragments);
            foreach (var one in batch.Cases) line.Write(one.Case, guide, EvidenceOf(guide, one), prior, parts);
            return buffer;
        }

        await foreach (var buffer in OrderedBatches.RunAsync(file.Batches(), Rank, stop))
        {
            await output.WriteAsync(buffer.WrittenMemory, stop);
            buffer.ResetWrittenCount();
            buffers.Add(buffer);
        }

        await output.FlushAsync(stop);
    }

    private static Evidence EvidenceOf(CompiledGuide guide, AnswerCase one)
    {
        var answers = CaseAnswers.Of(guide, one, fault: null);
        return (answers is null ? null : Evidence.Check(guide, answers).Evidence) ?? throw new InvalidDataException("the answer file changed while it was read");
    }
}
