using System.Buffers;
using System.Threading.Channels;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Cli.Identify;

/// <summary>Ranks the cases of a file on all cores and writes them in the order of the file, with a bounded number of cases in hand.</summary>
internal static class BatchIdentifier
{
    private const int BatchSize = 128;

    public static async Task RunAsync(CompiledGuide guide, Prior prior, AnswerFile file, Stream output, CancellationToken stop)
    {
        var queue = Channel.CreateBounded<Task<ArrayBufferWriter<byte>>>(2 * Environment.ProcessorCount);
        var reading = Task.Run(() => ReadAsync(guide, prior, file, queue.Writer, stop), stop);
        await foreach (var batch in queue.Reader.ReadAllAsync(stop))
        {
            var bytes = await batch;
            await output.WriteAsync(bytes.WrittenMemory, stop);
        }

        await reading;
        await output.FlushAsync(stop);
    }

    private static async Task ReadAsync(CompiledGuide guide, Prior prior, AnswerFile file, ChannelWriter<Task<ArrayBufferWriter<byte>>> queue, CancellationToken stop)
    {
        try
        {
            foreach (var batch in file.Cases(_ => { }).Chunk(BatchSize))
            {
                await queue.WriteAsync(Task.Run(() => Rank(guide, prior, batch), stop), stop);
            }

            queue.Complete();
        }
        catch (Exception e)
        {
            // The writer side must learn of it, or it would wait for ever.
            queue.Complete(e);
            throw;
        }
    }

    private static ArrayBufferWriter<byte> Rank(CompiledGuide guide, Prior prior, AnswerCase[] cases)
    {
        var buffer = new ArrayBufferWriter<byte>(64 * 1024);
        using var line = new CaseLine(buffer);
        foreach (var one in cases)
        {
            var answers = CaseAnswers.Of(guide, one, fault: null) ?? throw new InvalidDataException("the answer file changed while it was read");
            var evidence = Evidence.Check(guide, answers).Evidence ?? throw new InvalidDataException("the answer file changed while it was read");
            line.Write(one.Case, guide, evidence, prior);
        }

        return buffer;
    }
}
