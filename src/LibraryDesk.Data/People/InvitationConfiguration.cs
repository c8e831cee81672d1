using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.People;

internal sealed class InvitationConfiguration : IEntityTypeConfiguration<InvitationRow>
{
    public void Configure(EntityTypeBuilder<InvitationRow> invitation)
    {
        invitation.ToTable("invitations").HasKey(i => i.Id);
        invitation.Property(i => i.Id).ValueGeneratedNever();
        invitation.Property(i => i.Email).HasMaxLength(256);
        invitation.Property(i => i.Role).HasMaxLength(20);
        invitation.Property(i => i.CodeHash).HasMaxLength(64);
        invitation.HasIndex(i => i.CodeHash).IsUnique();
        invitation.HasIndex(i => i.Email);
    }
}
