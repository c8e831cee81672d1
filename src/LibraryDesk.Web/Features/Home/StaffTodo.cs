using System.Globalization;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Keeping;
using LibraryDesk.Web.Features.Recalls;
using static LibraryDesk.Web.Features.Home.HomeText;

namespace LibraryDesk.Web.Features.Home;

/// <summary>What waits for volunteers and librarians: recalls whose holders are not told, packets asked for, cases without their opinion.</summary>
internal sealed class StaffTodo(ListReviews reviews, WaitingRequests requests, RecallList recalls, MemberLoans loans, DueCount due)
{
    /// <summary>How the library's counts stand for a librarian; null for others.</summary>
    public async Task<LibraryToday?> TodayAsync(Actor actor, CancellationToken stop) =>
        (await loans.CountOverdueAsync(actor, stop)).TryGet(out var overdue, out _) ? new LibraryToday(overdue, await due.ReadAsync(actor, stop)) : null;

    /// <summary>The most pressing first; nothing for members.</summary>
    public async Task<IReadOnlyList<TodoItem>> ReadAsync(Actor actor, CancellationToken stop)
    {
        var items = new List<TodoItem>();
        if (actor.IsLibrarian)
        {
            if ((await recalls.UntoldAsync(actor, stop)).TryGet(out var called, out _)) items.AddRange(called.Recalls.Select(Untold).OfType<TodoItem>());
            if ((await requests.ReadAsync(actor, stop)).TryGet(out var waiting, out _) && waiting.Requests.Count > 0) items.Add(AskedFor(waiting.Requests.Count));
        }

        if (actor.IsVolunteer && (await reviews.CountAsync(actor, stop)).TryGet(out var cases, out _) && cases > 0) items.Add(Cases(cases));
        return items;
    }

    private static TodoItem? Untold(RecallView recall)
    {
        var left = RecallWords.Held(recall).Count - RecallWords.Told(recall);
        if (left == 0) return null;
        var title = RecallWords.Title(recall.Code, recall.Name.Variety);
        return new(
            "part-seed",
            Say.Count(left, $"{title} is called back: the holder of {left} packet is not told", $"{title} is called back: the holders of {left} packets are not told"),
            recall.Reason,
            string.Create(CultureInfo.InvariantCulture, $"/recalls/{recall.HoldId}"),
            Say["Open the recall"]);
    }

    private static TodoItem AskedFor(int count) => new(
        "seeds-straw",
        Say.Count(count, $"{count} packet is asked for", $"{count} packets are asked for"),
        Say["Pick from the shelf and keep it for who asked, then hand it over."],
        "/loans",
        Say["Open the counter"]);

    private static TodoItem Cases(int count) => new(
        "slot-whole",
        Say.Count(count, $"{count} case waits for your opinion", $"{count} cases wait for your opinion"),
        Say["You look first; the odds and what others think come after."],
        "/queue",
        Say["Open the queue"]);
}
