using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace LibraryDesk.Cli.Identify;

/// <summary>Works through a long list on all cores and gives the results in the order of the list, with a bounded number of batches in hand.</summary>
internal static class OrderedBatches
{
    public static async IAsyncEnumerable<TOut> RunAsync<TIn, TOut>(IEnumerable<TIn> items, Func<TIn, TOut> work, [EnumeratorCancellation] CancellationToken stop)
    {
        var queue = Channel.CreateBounded<Task<TOut>>(2 * Environment.ProcessorCount);
        using var left = CancellationTokenSource.CreateLinkedTokenSource(stop);
        var reading = Task.Run(() => ReadAsync(items, work, queue.Writer, left.Token), left.Token);
        try
        {
            await foreach (var result in queue.Reader.ReadAllAsync(stop)) yield return await result;
            await reading;
        }
        finally
        {
            // Whoever stops listening half way lets go of the reader too.
            await left.CancelAsync();
        }
    }

    private static async Task ReadAsync<TIn, TOut>(IEnumerable<TIn> items, Func<TIn, TOut> work, ChannelWriter<Task<TOut>> queue, CancellationToken stop)
    {
        try
        {
            foreach (var item in items) await queue.WriteAsync(Task.Run(() => work(item), stop), stop);
            queue.Complete();
        }
        catch (Exception e)
        {
            // The other side must learn of it, or it would wait for ever.
            queue.Complete(e);
            throw;
        }
    }
}
