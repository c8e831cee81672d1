using LibraryDesk.Desk.Mail;

namespace LibraryDesk.Web.Features.Mail;

internal static class MailRegistration
{
    public static void AddMail(this IServiceCollection services, IConfiguration configuration)
    {
        services.AddOptions<MailOptions>().Bind(configuration.GetSection(MailOptions.Section))
            .Validate(mail => MimeKit.MailboxAddress.TryParse(mail.From, out _), "Mail:From must be an e-mail address.")
            .ValidateOnStart();
        if (string.IsNullOrWhiteSpace(configuration["Mail:Host"])) services.AddSingleton<IMailSender, MailDrop>();
        else services.AddSingleton<IMailSender, SmtpMailSender>();
        services.AddHostedService<MailPost>();
    }
}
