using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Mail;
using MailKit.Net.Smtp;
using MailKit.Security;
using Microsoft.Extensions.Options;

namespace LibraryDesk.Web.Features.Mail;

/// <summary>Sends through the library's mail server.</summary>
internal sealed class SmtpMailSender(IOptions<MailOptions> options) : IMailSender
{
    public async Task SendAsync(OutgoingMailRow letter, CancellationToken stop)
    {
        var mail = options.Value;
        using var client = new SmtpClient();
        await client.ConnectAsync(mail.Host, mail.Port, SecureSocketOptions.Auto, stop);
        if (mail.User.Length > 0) await client.AuthenticateAsync(mail.User, mail.Password, stop);
        await client.SendAsync(MailLetter.Make(letter, mail), stop);
        await client.DisconnectAsync(quit: true, stop);
    }
}
