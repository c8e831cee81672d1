using LibraryDesk.Data.Seeds;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Search;

internal sealed class SearchNameConfiguration : IEntityTypeConfiguration<SearchNameRow>
{
    public void Configure(EntityTypeBuilder<SearchNameRow> row)
    {
        row.ToTable("search_names").HasKey(n => n.Id);
        row.Property(n => n.Id).ValueGeneratedNever();
        row.Property(n => n.Species).HasMaxLength(SeedText.Species);
        row.Property(n => n.NormalizedName).HasMaxLength(SeedText.Name);
        row.Property(n => n.Display).HasMaxLength(SeedText.Name);
        row.HasIndex(n => new { n.NormalizedName, n.Species }).IsUnique();
    }
}

internal sealed class SearchLotConfiguration : IEntityTypeConfiguration<SearchLotRow>
{
    public void Configure(EntityTypeBuilder<SearchLotRow> row)
    {
        row.ToTable("search_lots").HasKey(l => l.LotId);
        row.Property(l => l.LotId).ValueGeneratedNever();
        row.HasIndex(l => new { l.NameId, l.LotId });
        row.HasIndex(l => new { l.Year, l.LotId });
    }
}

internal sealed class SearchPostingConfiguration : IEntityTypeConfiguration<SearchPostingRow>
{
    public const int WordLength = 40;

    public void Configure(EntityTypeBuilder<SearchPostingRow> row)
    {
        row.ToTable("search_postings").HasKey(p => new { p.Word, p.Kind, p.Ref });
        row.Property(p => p.Word).HasMaxLength(WordLength);
        row.Property(p => p.Kind).HasMaxLength(1);
        // The reference leads: a planner that found the kind first would walk all names in their order rather than look up a word.
        row.HasIndex(p => new { p.Ref, p.Kind });
    }
}

internal sealed class SearchTrigramConfiguration : IEntityTypeConfiguration<SearchTrigramRow>
{
    public void Configure(EntityTypeBuilder<SearchTrigramRow> row)
    {
        row.ToTable("search_trigrams").HasKey(t => new { t.Trigram, t.Word });
        row.Property(t => t.Trigram).HasMaxLength(3);
        row.Property(t => t.Word).HasMaxLength(SearchPostingConfiguration.WordLength);
        row.HasIndex(t => t.Word);
    }
}
