using LibraryDesk.Lineage.Ledger;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Seeds;

internal sealed class LedgerEntryConfiguration : IEntityTypeConfiguration<LedgerEntryRow>
{
    public void Configure(EntityTypeBuilder<LedgerEntryRow> entry)
    {
        entry.ToTable("ledger_entries").HasKey(e => e.Sequence);
        entry.Property(e => e.Sequence).ValueGeneratedNever();
        entry.Property(e => e.Kind).HasMaxLength(24);
        entry.Property(e => e.PreviousHash).HasMaxLength(EntryHash.Length);
        entry.Property(e => e.Hash).HasMaxLength(EntryHash.Length);
        entry.HasIndex(e => new { e.Kind, e.Sequence });
    }
}

internal sealed class LedgerSubjectConfiguration : IEntityTypeConfiguration<LedgerSubjectRow>
{
    public void Configure(EntityTypeBuilder<LedgerSubjectRow> subject)
    {
        subject.ToTable("ledger_subjects").HasKey(s => new { s.NodeId, s.Sequence });
        subject.HasIndex(s => s.Sequence);
    }
}

internal sealed class LedgerHeadConfiguration : IEntityTypeConfiguration<LedgerHeadRow>
{
    public void Configure(EntityTypeBuilder<LedgerHeadRow> head)
    {
        head.ToTable("ledger_head").HasKey(h => h.Id);
        head.Property(h => h.Id).ValueGeneratedNever();
        head.Property(h => h.Hash).HasMaxLength(EntryHash.Length);
    }
}

internal sealed class CodeSeriesConfiguration : IEntityTypeConfiguration<CodeSeriesRow>
{
    public void Configure(EntityTypeBuilder<CodeSeriesRow> series)
    {
        series.ToTable("code_series").HasKey(s => new { s.Kind, s.Year });
        series.Property(s => s.Kind).HasMaxLength(1);
    }
}
