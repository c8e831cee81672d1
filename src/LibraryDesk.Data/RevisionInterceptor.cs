using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace LibraryDesk.Data;

/// <summary>Raises <see cref="IRevisioned.Revision"/> of every changed row just before it is saved.</summary>
public sealed class RevisionInterceptor : SaveChangesInterceptor
{
    /// <inheritdoc />
    public override ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        Raise(eventData.Context);
        return base.SavingChangesAsync(eventData, result, cancellationToken);
    }

    /// <inheritdoc />
    public override InterceptionResult<int> SavingChanges(DbContextEventData eventData, InterceptionResult<int> result)
    {
        Raise(eventData.Context);
        return base.SavingChanges(eventData, result);
    }

    private static void Raise(DbContext? context)
    {
        if (context is null) return;
        foreach (var entry in context.ChangeTracker.Entries<IRevisioned>())
        {
            if (entry.State is EntityState.Added or EntityState.Modified) entry.Entity.Revision++;
        }
    }
}
