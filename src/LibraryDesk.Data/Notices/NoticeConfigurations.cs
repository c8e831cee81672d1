using LibraryDesk.Data.Cases;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Notices;

internal sealed class NoticeConfiguration : IEntityTypeConfiguration<NoticeRow>
{
    public void Configure(EntityTypeBuilder<NoticeRow> row)
    {
        row.ToTable("notices").HasKey(n => n.Id);
        row.Property(n => n.Kind).HasConversion<string>().HasMaxLength(12);
        row.Property(n => n.About).HasMaxLength(120);
        row.Property(n => n.Heading).HasMaxLength(200);
        row.Property(n => n.Text).HasMaxLength(1200);
        row.Property(n => n.Address).HasMaxLength(200);
        row.HasIndex(n => new { n.PersonId, n.About }).IsUnique();
        row.HasIndex(n => new { n.PersonId, n.ReadAt });
    }
}

internal sealed class NoticeChoiceConfiguration : IEntityTypeConfiguration<NoticeChoiceRow>
{
    public void Configure(EntityTypeBuilder<NoticeChoiceRow> row)
    {
        row.ToTable("notice_choices").HasKey(c => new { c.PersonId, c.Kind });
        row.Property(c => c.Kind).HasConversion<string>().HasMaxLength(12);
        row.Property(c => c.Way).HasConversion<string>().HasMaxLength(8);
    }
}

internal sealed class SeasonReminderConfiguration : IEntityTypeConfiguration<SeasonReminderRow>
{
    public void Configure(EntityTypeBuilder<SeasonReminderRow> row)
    {
        row.ToTable("season_reminders").HasKey(r => new { r.CaseId, r.Stage, r.Look });
        row.Property(r => r.Stage).HasMaxLength(40);
        row.HasOne<CaseRow>().WithMany().HasForeignKey(r => r.CaseId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class CalendarLinkConfiguration : IEntityTypeConfiguration<CalendarLinkRow>
{
    public void Configure(EntityTypeBuilder<CalendarLinkRow> row)
    {
        row.ToTable("calendar_links").HasKey(l => l.PersonId);
        row.Property(l => l.PersonId).ValueGeneratedNever();
        row.Property(l => l.KeyHash).HasMaxLength(64);
        row.HasIndex(l => l.KeyHash).IsUnique();
    }
}
