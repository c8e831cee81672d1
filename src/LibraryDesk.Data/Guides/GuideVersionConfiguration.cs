using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Guides;

internal sealed class GuideVersionConfiguration : IEntityTypeConfiguration<GuideVersionRow>
{
    public void Configure(EntityTypeBuilder<GuideVersionRow> guide)
    {
        guide.ToTable("guide_versions").HasKey(g => g.Id);
        guide.Property(g => g.GuideId).HasMaxLength(60);
        guide.Property(g => g.Version).HasMaxLength(40);
        guide.HasIndex(g => new { g.GuideId, g.Version }).IsUnique();
    }
}
