namespace LibraryDesk.Web.Features.Mail;

/// <summary>The section <c>Mail</c> of the configuration.</summary>
public sealed class MailOptions
{
    public const string Section = "Mail";

    /// <summary>Name of the SMTP server; empty: letters are laid into <see cref="DropFolder"/> instead.</summary>
    public string Host { get; set; } = "";
    public int Port { get; set; } = 587;
    /// <summary>Empty for a server that asks for none.</summary>
    public string User { get; set; } = "";
    public string Password { get; set; } = "";
    /// <summary>The sender of every letter.</summary>
    public string From { get; set; } = "desk@localhost";
    /// <summary>Where letters are laid as .eml files when there is no server.</summary>
    public string DropFolder { get; set; } = "app-data/mail";
}
