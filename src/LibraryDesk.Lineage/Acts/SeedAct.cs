using System.Text.Json.Serialization;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Acts;

/// <summary>What one ledger entry says happened. Holds facts and opaque ids only, never anything about a person.</summary>
public abstract record SeedAct
{
    /// <summary>What happened.</summary>
    [JsonIgnore]
    public abstract EntryKind Kind { get; }

    /// <summary>The nodes of the lineage this concerns; by these an entry is found from a packet or a lot.</summary>
    [JsonIgnore]
    public abstract IEnumerable<NodeId> Subjects { get; }
}
