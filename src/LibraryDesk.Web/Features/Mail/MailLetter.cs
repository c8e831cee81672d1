using LibraryDesk.Data.Mail;
using MimeKit;

namespace LibraryDesk.Web.Features.Mail;

internal static class MailLetter
{
    public static MimeMessage Make(OutgoingMailRow letter, MailOptions options)
    {
        var message = new MimeMessage { Subject = letter.Subject, Body = new TextPart("plain") { Text = letter.Body } };
        message.From.Add(MailboxAddress.Parse(options.From));
        message.To.Add(MailboxAddress.Parse(letter.To));
        return message;
    }
}
