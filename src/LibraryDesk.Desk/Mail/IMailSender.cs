using LibraryDesk.Data.Mail;

namespace LibraryDesk.Desk.Mail;

/// <summary>The way out for letters: a real server, or a folder.</summary>
public interface IMailSender
{
    /// <summary>Sends one letter; throws when it did not leave.</summary>
    Task SendAsync(OutgoingMailRow letter, CancellationToken stop);
}
