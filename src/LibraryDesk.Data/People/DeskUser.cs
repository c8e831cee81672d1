using Microsoft.AspNetCore.Identity;

namespace LibraryDesk.Data.People;

/// <summary>A person with a sign-in. The ledger names people only by <see cref="IdentityUser{TKey}.Id"/>, so the rest can be erased.</summary>
public sealed class DeskUser : IdentityUser<Guid>
{
    /// <summary>What the library calls them. Empty after erasure.</summary>
    public string DisplayName { get; set; } = "";

    /// <summary>The name in upper case, filled in .NET, so that a search gives the same people on both databases.</summary>
    public string SearchName { get; set; } = "";

    /// <summary>When the account was made, UTC.</summary>
    public DateTimeOffset JoinedAt { get; set; }

    /// <summary>When the personal details were erased; null while they stand.</summary>
    public DateTimeOffset? ErasedAt { get; set; }
}
