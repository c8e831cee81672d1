using LibraryDesk.Data;
using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Mail;
using LibraryDesk.TestServers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace LibraryDesk.Desk.Tests.Notices;

public sealed class SendDueMailTests
{
    [Theory, OnBoth]
    public async Task Two_servers_on_one_library_send_a_letter_once(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var beside = library.AnotherServer();
        await WriteAsync(library, 3);
        var left = new List<long>();
        var second = Post(library, beside, new Sender((letter, _) =>
        {
            left.Add(letter.Id);
            return Task.CompletedTask;
        }));
        var first = Post(library, library.Services, new Sender(async (letter, stop) =>
        {
            left.Add(letter.Id);
            await second.RunAsync(stop);
        }));

        await first.RunAsync(default);
        Assert.Equal(3, left.Count);
        Assert.Equal(3, left.Distinct().Count());
        Assert.Equal(0, await first.RunAsync(default));
    }

    [Theory, OnBoth]
    public async Task A_letter_whose_server_stopped_while_sending_comes_up_again(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await WriteAsync(library, 1);
        var stopped = Post(library, library.Services, new Sender((_, _) => throw new OperationCanceledException()));
        await Assert.ThrowsAsync<OperationCanceledException>(() => stopped.RunAsync(default));

        var sent = Post(library, library.Services, new Sender((_, _) => Task.CompletedTask));
        Assert.Equal(0, await sent.RunAsync(default));
        library.Clock.Advance(TimeSpan.FromMinutes(10));
        Assert.Equal(1, await sent.RunAsync(default));
    }

    private static SendDueMail Post(TestLibrary library, IServiceProvider server, IMailSender sender) =>
        new(server.GetRequiredService<IDbContextFactory<LibraryDbContext>>(), sender, library.Clock, NullLogger<SendDueMail>.Instance);

    private static async Task WriteAsync(TestLibrary library, int letters)
    {
        await using var db = await library.OpenAsync();
        var now = library.Clock.GetUtcNow();
        for (var i = 0; i < letters; i++) db.Add(new OutgoingMailRow { To = "maren@example.org", Subject = $"Letter {i}", Body = "A look is asked for.", CreatedAt = now, DueAt = now });
        await db.SaveChangesAsync();
    }

    private sealed class Sender(Func<OutgoingMailRow, CancellationToken, Task> send) : IMailSender
    {
        public Task SendAsync(OutgoingMailRow letter, CancellationToken stop) => send(letter, stop);
    }
}
