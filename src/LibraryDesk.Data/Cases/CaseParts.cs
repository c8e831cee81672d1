using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace LibraryDesk.Data.Cases;

internal static class CaseParts
{
    /// <summary>A row that has no life without its case.</summary>
    public static void PartOfCase<TRow>(this EntityTypeBuilder<TRow> row, Expression<Func<TRow, object?>> caseId)
        where TRow : class
    {
        row.HasOne<CaseRow>().WithMany().HasForeignKey(caseId).OnDelete(DeleteBehavior.Cascade);
        row.HasIndex(caseId);
    }
}
