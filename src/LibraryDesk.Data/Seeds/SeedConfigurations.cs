using LibraryDesk.Lineage.Codes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Seeds;

// Numbers are handed out by the ledger, never by the database. Rows of the lineage have no foreign keys to each other: they are
// written and replayed from the ledger alone, whose rules are stricter, and a rebuild may write them in any order.
internal sealed class AccessionConfiguration : IEntityTypeConfiguration<AccessionRow>
{
    public void Configure(EntityTypeBuilder<AccessionRow> row)
    {
        row.ToTable("accessions").HasKey(a => a.Id);
        row.Property(a => a.Id).ValueGeneratedNever();
        row.Property(a => a.Code).HasMaxLength(AccessionCode.Length);
        row.Property(a => a.Library).HasMaxLength(SeedText.Name);
        row.Property(a => a.Species).HasMaxLength(SeedText.Species);
        row.Property(a => a.DeclaredName).HasMaxLength(SeedText.Name);
        row.Property(a => a.Source).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(a => a.Unit).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.HasIndex(a => a.Code).IsUnique();
        row.HasIndex(a => a.DonorId);
    }
}

internal sealed class LotConfiguration : IEntityTypeConfiguration<LotRow>
{
    public void Configure(EntityTypeBuilder<LotRow> row)
    {
        row.ToTable("lots").HasKey(l => l.Id);
        row.Property(l => l.Id).ValueGeneratedNever();
        row.Property(l => l.Code).HasMaxLength(LotCode.Length);
        row.Property(l => l.Origin).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(l => l.Species).HasMaxLength(SeedText.Species);
        row.Property(l => l.Unit).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(l => l.Place).HasMaxLength(SeedText.Name);
        row.HasIndex(l => l.Code).IsUnique();
        row.HasIndex(l => l.MadeOn);
    }
}

internal sealed class LineageEdgeConfiguration : IEntityTypeConfiguration<LineageEdgeRow>
{
    public void Configure(EntityTypeBuilder<LineageEdgeRow> row)
    {
        row.ToTable("lineage_edges").HasKey(e => new { e.ParentId, e.ChildId });
        row.HasIndex(e => new { e.ChildId, e.ParentId });
    }
}

internal sealed class PacketConfiguration : IEntityTypeConfiguration<PacketRow>
{
    public void Configure(EntityTypeBuilder<PacketRow> row)
    {
        row.ToTable("packets").HasKey(p => p.Id);
        row.Property(p => p.Id).ValueGeneratedNever();
        row.Property(p => p.Code).HasMaxLength(PacketCode.Length);
        row.Property(p => p.Unit).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(p => p.Standing).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(p => p.Place).HasMaxLength(SeedText.Name);
        row.HasIndex(p => p.Code).IsUnique();
        row.HasIndex(p => new { p.LotId, p.Standing });
        row.HasIndex(p => p.HolderId);
    }
}

internal sealed class LoanConfiguration : IEntityTypeConfiguration<LoanRow>
{
    public void Configure(EntityTypeBuilder<LoanRow> row)
    {
        row.ToTable("loans").HasKey(l => l.Id);
        row.Property(l => l.Id).ValueGeneratedNever();
        row.Property(l => l.Ending).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.HasIndex(l => l.PacketId);
        row.HasIndex(l => new { l.BorrowerId, l.LentOn });
        row.HasIndex(l => new { l.EndedOn, l.DueOn });
    }
}

internal sealed class SeedRequestConfiguration : IEntityTypeConfiguration<SeedRequestRow>
{
    public void Configure(EntityTypeBuilder<SeedRequestRow> row)
    {
        row.ToTable("seed_requests").HasKey(r => r.Id);
        row.Property(r => r.Id).ValueGeneratedNever();
        row.HasIndex(r => r.LotId);
        row.HasIndex(r => r.ById);
    }
}

internal sealed class GrowOutConfiguration : IEntityTypeConfiguration<GrowOutRow>
{
    public void Configure(EntityTypeBuilder<GrowOutRow> row)
    {
        row.ToTable("grow_outs").HasKey(g => g.Id);
        row.Property(g => g.Id).ValueGeneratedNever();
        row.Property(g => g.SownUnit).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(g => g.HarvestUnit).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(g => g.Isolation).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(g => g.Manner).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.HasIndex(g => g.FromId);
        row.HasIndex(g => g.LoanId);
        row.HasIndex(g => g.GrowerId);
    }
}

internal sealed class HoldConfiguration : IEntityTypeConfiguration<HoldRow>
{
    public void Configure(EntityTypeBuilder<HoldRow> row)
    {
        row.ToTable("holds").HasKey(h => h.Id);
        row.Property(h => h.Id).ValueGeneratedNever();
        row.Property(h => h.Reason).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(h => h.ReleasedWhy).HasMaxLength(SeedText.Why);
        row.HasIndex(h => h.NodeId);
    }
}

internal sealed class RecallConfiguration : IEntityTypeConfiguration<RecallRow>
{
    public void Configure(EntityTypeBuilder<RecallRow> row)
    {
        row.ToTable("recalls").HasKey(r => r.HoldId);
        row.Property(r => r.HoldId).ValueGeneratedNever();
        row.Property(r => r.Reason).HasMaxLength(SeedText.Why);
        row.HasIndex(r => r.NodeId);
    }
}

internal sealed class RecallPacketConfiguration : IEntityTypeConfiguration<RecallPacketRow>
{
    public void Configure(EntityTypeBuilder<RecallPacketRow> row)
    {
        row.ToTable("recall_packets").HasKey(r => new { r.HoldId, r.PacketId });
        row.HasIndex(r => r.PacketId);
    }
}

internal sealed class RecallAnswerConfiguration : IEntityTypeConfiguration<RecallAnswerRow>
{
    public void Configure(EntityTypeBuilder<RecallAnswerRow> row)
    {
        row.ToTable("recall_answers").HasKey(r => new { r.HoldId, r.PacketId });
        row.Property(r => r.Answer).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(r => r.Note).HasMaxLength(SeedText.Why);
        row.HasIndex(r => r.PersonId);
    }
}

internal sealed class RecallLibraryConfiguration : IEntityTypeConfiguration<RecallLibraryRow>
{
    public void Configure(EntityTypeBuilder<RecallLibraryRow> row) => row.ToTable("recall_libraries").HasKey(r => new { r.HoldId, r.Entry });
}

internal sealed class NameClaimConfiguration : IEntityTypeConfiguration<NameClaimRow>
{
    public void Configure(EntityTypeBuilder<NameClaimRow> row)
    {
        row.ToTable("name_claims").HasKey(c => c.Id);
        row.Property(c => c.Id).ValueGeneratedNever();
        row.Property(c => c.Species).HasMaxLength(SeedText.Species);
        row.Property(c => c.Variety).HasMaxLength(SeedText.Name);
        row.Property(c => c.Grounds).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(c => c.CaseNumber).HasMaxLength(SeedText.Word);
        row.Property(c => c.Link).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(c => c.GuideVersion).HasMaxLength(SeedText.Species);
        row.HasIndex(c => c.NodeId);
        row.HasIndex(c => c.Variety);
    }
}

internal sealed class GerminationTestConfiguration : IEntityTypeConfiguration<GerminationTestRow>
{
    public void Configure(EntityTypeBuilder<GerminationTestRow> row)
    {
        row.ToTable("germination_tests").HasKey(t => t.Id);
        row.Property(t => t.Id).ValueGeneratedNever();
        row.Property(t => t.Replicates).HasMaxLength(SeedText.Why);
        row.HasIndex(t => new { t.LotId, t.ReadOn });
    }
}

internal sealed class SeedTransferConfiguration : IEntityTypeConfiguration<SeedTransferRow>
{
    public void Configure(EntityTypeBuilder<SeedTransferRow> row)
    {
        row.ToTable("seed_transfers").HasKey(t => t.Entry);
        row.Property(t => t.Entry).ValueGeneratedNever();
        row.Property(t => t.Unit).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(t => t.Library).HasMaxLength(SeedText.Name);
        row.HasIndex(t => t.NodeId);
    }
}

internal sealed class DonorConfiguration : IEntityTypeConfiguration<DonorRow>
{
    public void Configure(EntityTypeBuilder<DonorRow> row)
    {
        row.ToTable("donors").HasKey(d => d.Id);
        row.Property(d => d.Id).ValueGeneratedNever();
        row.Property(d => d.Name).HasMaxLength(SeedText.Name);
        row.Property(d => d.Contact).HasMaxLength(SeedText.Contact);
        row.Property(d => d.Note).HasMaxLength(1000);
        row.Property(d => d.Revision).IsConcurrencyToken();
        row.HasIndex(d => d.Name);
    }
}

internal sealed class VarietyConfiguration : IEntityTypeConfiguration<VarietyRow>
{
    public void Configure(EntityTypeBuilder<VarietyRow> row)
    {
        row.ToTable("varieties").HasKey(v => v.Id);
        row.Property(v => v.Name).HasMaxLength(SeedText.Name);
        row.Property(v => v.NormalizedName).HasMaxLength(SeedText.Name);
        row.Property(v => v.Species).HasMaxLength(SeedText.Species);
        row.Property(v => v.Synonyms).HasMaxLength(2000);
        row.Property(v => v.Breeding).HasConversion<string>().HasMaxLength(SeedText.Word);
        row.Property(v => v.Description).HasMaxLength(4000);
        row.Property(v => v.Traits).HasMaxLength(4000);
        row.Property(v => v.Source).HasMaxLength(1000);
        row.Property(v => v.Revision).IsConcurrencyToken();
        row.HasIndex(v => new { v.Species, v.NormalizedName }).IsUnique();
    }
}

internal sealed class VarietyPhotoConfiguration : IEntityTypeConfiguration<VarietyPhotoRow>
{
    public void Configure(EntityTypeBuilder<VarietyPhotoRow> row)
    {
        row.ToTable("variety_photos").HasKey(p => p.Id);
        row.Property(p => p.Id).ValueGeneratedNever();
        row.Property(p => p.StoreKey).HasMaxLength(80);
        row.Property(p => p.Caption).HasMaxLength(300);
        row.HasIndex(p => p.VarietyId);
        row.HasIndex(p => p.StoreKey);
        row.HasOne<VarietyRow>().WithMany().HasForeignKey(p => p.VarietyId).OnDelete(DeleteBehavior.Restrict);
    }
}
