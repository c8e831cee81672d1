using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Mail;

internal sealed class OutgoingMailConfiguration : IEntityTypeConfiguration<OutgoingMailRow>
{
    public void Configure(EntityTypeBuilder<OutgoingMailRow> mail)
    {
        mail.ToTable("outgoing_mail").HasKey(m => m.Id);
        mail.Property(m => m.To).HasMaxLength(256);
        mail.Property(m => m.Subject).HasMaxLength(200);
        mail.Property(m => m.Body).HasMaxLength(8000);
        mail.HasIndex(m => new { m.SentAt, m.DueAt });
    }
}
