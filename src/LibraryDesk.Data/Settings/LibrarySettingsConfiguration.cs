using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Settings;

internal sealed class LibrarySettingsConfiguration : IEntityTypeConfiguration<LibrarySettingsRow>
{
    public void Configure(EntityTypeBuilder<LibrarySettingsRow> settings)
    {
        settings.ToTable("library_settings").HasKey(s => s.Id);
        settings.Property(s => s.Id).ValueGeneratedNever();
        settings.Property(s => s.Name).HasMaxLength(120);
        settings.Property(s => s.Tagline).HasMaxLength(120);
        settings.Property(s => s.CodePrefix).HasMaxLength(3);
        settings.Property(s => s.SharingNotice).HasMaxLength(1000);
        settings.Property(s => s.LocalRulesUrl).HasMaxLength(500);
        settings.Property(s => s.PublicAddress).HasMaxLength(300);
        settings.Property(s => s.IsolationTopic).HasMaxLength(60);
        settings.Property(s => s.Stores).HasMaxLength(2000);
        settings.Property(s => s.SetUpCodeHash).HasMaxLength(64);
        settings.Property(s => s.Revision).IsConcurrencyToken();
    }
}
