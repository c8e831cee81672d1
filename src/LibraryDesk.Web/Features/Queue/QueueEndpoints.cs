using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Threading.Channels;
using LibraryDesk.Desk.Cases;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Http.HttpResults;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>Tells open review pages that something changed. Only case numbers go over the wire.</summary>
internal static class QueueEndpoints
{
    // Another server's changes do not reach this one's feed, so pages are told to look for themselves from time to time.
    private static readonly TimeSpan LookAnyway = TimeSpan.FromSeconds(45);

    public static void MapQueue(this IEndpointRouteBuilder app) =>
        app.MapGet("/queue/changes", Changes).RequireAuthorization(DeskAccounts.VolunteersOnly).ExcludeFromDescription();

    private static ServerSentEventsResult<string> Changes(CaseFeed feed, TimeProvider clock, CancellationToken stop) =>
        TypedResults.ServerSentEvents(FollowAsync(feed, clock, stop));

    private static async IAsyncEnumerable<SseItem<string>> FollowAsync(
        CaseFeed feed, TimeProvider clock, [EnumeratorCancellation] CancellationToken stop)
    {
        // One waiting change is enough: the page reads the list anew anyway.
        var changes = Channel.CreateBounded<long>(new BoundedChannelOptions(16) { FullMode = BoundedChannelFullMode.DropOldest });
        using var following = feed.FollowAll(caseId => changes.Writer.TryWrite(caseId));
        // Sent at once, so that the browser knows that the line stands.
        yield return new SseItem<string>("0", "ready");
        while (!stop.IsCancellationRequested)
        {
            var (said, caseId) = await NextAsync(changes.Reader, clock, stop);
            yield return new SseItem<string>(FormattableString.Invariant($"{caseId}"), said ? "changed" : "look");
        }
    }

    private static async Task<(bool Said, long CaseId)> NextAsync(ChannelReader<long> changes, TimeProvider clock, CancellationToken stop)
    {
        using var patience = new CancellationTokenSource(LookAnyway, clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, stop);
        try
        {
            return (true, await changes.ReadAsync(either.Token));
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return (false, 0);
        }
    }
}
