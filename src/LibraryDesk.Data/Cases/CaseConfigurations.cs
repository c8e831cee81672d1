using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Cases;

internal sealed class CaseConfiguration : IEntityTypeConfiguration<CaseRow>
{
    public void Configure(EntityTypeBuilder<CaseRow> row)
    {
        row.ToTable("cases").HasKey(c => c.Id);
        row.Property(c => c.Title).HasMaxLength(160);
        row.Property(c => c.GuideId).HasMaxLength(60);
        row.Property(c => c.GuideVersion).HasMaxLength(40);
        row.Property(c => c.State).HasConversion<string>().HasMaxLength(20);
        row.Property(c => c.Specimen).HasConversion<string>().HasMaxLength(12);
        row.Property(c => c.GuestEmail).HasMaxLength(256);
        row.Property(c => c.GuestLanguage).HasMaxLength(8);
        row.Property(c => c.GuestKeyHash).HasMaxLength(64);
        row.Property(c => c.GuestKeyLocked).HasMaxLength(600);
        row.Property(c => c.ClosingNote).HasMaxLength(2000);
        row.Property(c => c.Revision).IsConcurrencyToken();
        row.HasIndex(c => new { c.State, c.StateSince });
        row.HasIndex(c => c.OwnerId);
        row.HasIndex(c => c.GuestKeyHash);
        row.HasIndex(c => c.BatchId);
    }
}

internal sealed class LookConfiguration : IEntityTypeConfiguration<LookRow>
{
    public void Configure(EntityTypeBuilder<LookRow> row)
    {
        row.ToTable("looks").HasKey(l => l.Id);
        row.Property(l => l.Parts).HasMaxLength(200);
        row.Property(l => l.Note).HasMaxLength(2000);
        row.Property(l => l.Revision).IsConcurrencyToken();
        row.HasIndex(l => new { l.CaseId, l.Number }).IsUnique();
        row.PartOfCase(l => l.CaseId);
    }
}

internal sealed class AnswerConfiguration : IEntityTypeConfiguration<AnswerRow>
{
    public void Configure(EntityTypeBuilder<AnswerRow> row)
    {
        row.ToTable("answers").HasKey(a => a.Id);
        row.Property(a => a.TraitId).HasMaxLength(60);
        row.Property(a => a.Kind).HasConversion<string>().HasMaxLength(12);
        row.Property(a => a.States).HasMaxLength(400);
        row.Property(a => a.Sureness).HasMaxLength(8);
        row.HasIndex(a => new { a.CaseId, a.TraitId });
        row.HasIndex(a => a.LookId);
        row.PartOfCase(a => a.CaseId);
        row.HasOne<LookRow>().WithMany().HasForeignKey(a => a.LookId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class PhotoConfiguration : IEntityTypeConfiguration<PhotoRow>
{
    public void Configure(EntityTypeBuilder<PhotoRow> row)
    {
        row.ToTable("photos").HasKey(p => p.Id);
        row.Property(p => p.Id).ValueGeneratedNever();
        row.Property(p => p.Part).HasMaxLength(40);
        row.Property(p => p.StoreKey).HasMaxLength(80);
        row.Property(p => p.Caption).HasMaxLength(300);
        row.HasIndex(p => p.LookId);
        row.PartOfCase(p => p.CaseId);
        row.HasOne<LookRow>().WithMany().HasForeignKey(p => p.LookId).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class OriginClueConfiguration : IEntityTypeConfiguration<OriginClueRow>
{
    public void Configure(EntityTypeBuilder<OriginClueRow> row)
    {
        row.ToTable("origin_clues").HasKey(o => o.Id);
        row.Property(o => o.Kind).HasConversion<string>().HasMaxLength(12);
        row.Property(o => o.PacketCode).HasMaxLength(24);
        row.Property(o => o.Note).HasMaxLength(1000);
        row.HasIndex(o => o.PacketCode);
        row.PartOfCase(o => o.CaseId);
    }
}

internal sealed class OpinionConfiguration : IEntityTypeConfiguration<OpinionRow>
{
    public void Configure(EntityTypeBuilder<OpinionRow> row)
    {
        row.ToTable("opinions").HasKey(o => o.Id);
        row.Property(o => o.SealedTaxon).HasMaxLength(80);
        row.Property(o => o.SealedQualifier).HasMaxLength(8);
        row.Property(o => o.SealedNote).HasMaxLength(2000);
        row.Property(o => o.FinalTaxon).HasMaxLength(80);
        row.Property(o => o.FinalQualifier).HasMaxLength(8);
        row.Property(o => o.FinalNote).HasMaxLength(2000);
        row.Property(o => o.Revision).IsConcurrencyToken();
        row.HasIndex(o => new { o.CaseId, o.Round, o.VolunteerId }).IsUnique();
        row.PartOfCase(o => o.CaseId);
    }
}

internal sealed class SuggestionConfiguration : IEntityTypeConfiguration<SuggestionRow>
{
    public void Configure(EntityTypeBuilder<SuggestionRow> row)
    {
        row.ToTable("suggestions").HasKey(s => s.Id);
        row.Property(s => s.Taxon).HasMaxLength(80);
        row.Property(s => s.FormId).HasMaxLength(120);
        row.Property(s => s.VarietyName).HasMaxLength(160);
        row.Property(s => s.Reason).HasMaxLength(2000);
        row.PartOfCase(s => s.CaseId);
    }
}

internal sealed class LookRequestConfiguration : IEntityTypeConfiguration<LookRequestRow>
{
    public void Configure(EntityTypeBuilder<LookRequestRow> row)
    {
        row.ToTable("look_requests").HasKey(r => r.Id);
        row.Property(r => r.TraitId).HasMaxLength(60);
        row.Property(r => r.PartId).HasMaxLength(40);
        row.Property(r => r.Message).HasMaxLength(1000);
        row.PartOfCase(r => r.CaseId);
    }
}

internal sealed class DeterminationConfiguration : IEntityTypeConfiguration<DeterminationRow>
{
    public void Configure(EntityTypeBuilder<DeterminationRow> row)
    {
        row.ToTable("determinations").HasKey(d => d.Id);
        row.Property(d => d.Taxon).HasMaxLength(80);
        row.Property(d => d.Qualifier).HasMaxLength(8);
        row.Property(d => d.VarietyName).HasMaxLength(160);
        row.Property(d => d.OriginPacketCode).HasMaxLength(24);
        row.Property(d => d.Grounds).HasMaxLength(2000);
        row.Property(d => d.GuideId).HasMaxLength(60);
        row.Property(d => d.GuideVersion).HasMaxLength(40);
        row.HasIndex(d => new { d.CaseId, d.Round }).IsUnique();
        row.PartOfCase(d => d.CaseId);
    }
}

internal sealed class CaseEventConfiguration : IEntityTypeConfiguration<CaseEventRow>
{
    public void Configure(EntityTypeBuilder<CaseEventRow> row)
    {
        row.ToTable("case_events").HasKey(e => e.Id);
        row.Property(e => e.Kind).HasMaxLength(40);
        row.Property(e => e.Detail).HasMaxLength(1000);
        row.PartOfCase(e => e.CaseId);
    }
}
