using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.People;

internal sealed class DeskUserConfiguration : IEntityTypeConfiguration<DeskUser>
{
    public void Configure(EntityTypeBuilder<DeskUser> user) =>
        user.Property(u => u.DisplayName).HasMaxLength(120);
}
