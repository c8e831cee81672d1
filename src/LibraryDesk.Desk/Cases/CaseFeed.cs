using System.Collections.Concurrent;

namespace LibraryDesk.Desk.Cases;

/// <summary>
/// Tells whoever is looking that a case changed, inside this process only. A second server is not told, so a page that follows a case
/// also looks for itself from time to time.
/// </summary>
public sealed class CaseFeed
{
    private readonly ConcurrentDictionary<Guid, (long? CaseId, Action<long> Changed)> _followers = new();

    /// <summary>Calls <paramref name="changed"/> after every change of the case, until disposed. It must be quick and must not throw.</summary>
    public IDisposable Follow(long caseId, Action changed)
    {
        ArgumentNullException.ThrowIfNull(changed);
        return Add(caseId, _ => changed());
    }

    /// <summary>The same for every case, with the number of the one that changed.</summary>
    public IDisposable FollowAll(Action<long> changed)
    {
        ArgumentNullException.ThrowIfNull(changed);
        return Add(null, changed);
    }

    /// <summary>To be called after the change was saved.</summary>
    public void Publish(long caseId)
    {
        foreach (var (wanted, changed) in _followers.Values)
        {
            if (wanted is null || wanted == caseId) changed(caseId);
        }
    }

    private Following Add(long? caseId, Action<long> changed)
    {
        var id = Guid.NewGuid();
        _followers[id] = (caseId, changed);
        return new Following(this, id);
    }

    private sealed class Following(CaseFeed feed, Guid id) : IDisposable
    {
        public void Dispose() => feed._followers.TryRemove(id, out _);
    }
}
