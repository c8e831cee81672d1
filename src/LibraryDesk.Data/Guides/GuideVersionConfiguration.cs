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
        guide.Property(g => g.Note).HasMaxLength(2000);
        guide.HasIndex(g => new { g.GuideId, g.Version }).IsUnique();
    }
}

internal sealed class GuideDraftConfiguration : IEntityTypeConfiguration<GuideDraftRow>
{
    public void Configure(EntityTypeBuilder<GuideDraftRow> draft)
    {
        draft.ToTable("guide_drafts").HasKey(d => d.Id);
        draft.Property(d => d.GuideId).HasMaxLength(60);
        draft.Property(d => d.BaseVersion).HasMaxLength(40);
        draft.Property(d => d.Revision).IsConcurrencyToken();
        draft.HasIndex(d => d.GuideId).IsUnique();
    }
}

internal sealed class GuideEditConfiguration : IEntityTypeConfiguration<GuideEditRow>
{
    public void Configure(EntityTypeBuilder<GuideEditRow> edit)
    {
        edit.ToTable("guide_edits").HasKey(e => e.Id);
        edit.HasIndex(e => new { e.DraftId, e.Number }).IsUnique();
        edit.HasOne<GuideDraftRow>().WithMany().HasForeignKey(e => e.DraftId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class GuideRerunConfiguration : IEntityTypeConfiguration<GuideRerunRow>
{
    public void Configure(EntityTypeBuilder<GuideRerunRow> rerun)
    {
        rerun.ToTable("guide_reruns").HasKey(r => r.Id);
        rerun.Property(r => r.Fingerprint).HasMaxLength(64);
        rerun.Property(r => r.BeforeVersion).HasMaxLength(40);
        rerun.HasIndex(r => r.DraftId);
        rerun.HasOne<GuideDraftRow>().WithMany().HasForeignKey(r => r.DraftId).OnDelete(DeleteBehavior.Cascade);
    }
}
