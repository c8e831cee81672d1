using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.People;

internal sealed class DeskUserConfiguration : IEntityTypeConfiguration<DeskUser>
{
    public void Configure(EntityTypeBuilder<DeskUser> user)
    {
        user.Property(u => u.DisplayName).HasMaxLength(120);
        user.Property(u => u.SearchName).HasMaxLength(120);
        user.HasIndex(u => u.SearchName);
    }
}
