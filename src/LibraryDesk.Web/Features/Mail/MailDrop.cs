using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Mail;
using Microsoft.Extensions.Options;

namespace LibraryDesk.Web.Features.Mail;

/// <summary>Without a mail server: lays each letter into a folder, where a person or another program can pick it up.</summary>
internal sealed class MailDrop(IOptions<MailOptions> options) : IMailSender
{
    public async Task SendAsync(OutgoingMailRow letter, CancellationToken stop)
    {
        Directory.CreateDirectory(options.Value.DropFolder);
        var path = Path.Combine(options.Value.DropFolder, $"{letter.Id:D8}.eml");
        await MailLetter.Make(letter, options.Value).WriteToAsync(path, stop);
    }
}
