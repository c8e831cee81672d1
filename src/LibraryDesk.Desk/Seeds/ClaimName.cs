using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Rules;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds;

/// <summary>A name somebody claims for seed, other than by a determination of the desk.</summary>
/// <param name="Code">Of the lot or accession.</param>
/// <param name="Species">Candidate id; null when silent about it.</param>
/// <param name="Variety">Null for a species alone.</param>
/// <param name="Grounds">What it rests on; not <see cref="ClaimGrounds.DeskDetermination"/>, which has <see cref="ClaimFromDetermination"/>.</param>
/// <param name="ById">Whose word; null for the actor's where the grounds need somebody's.</param>
/// <param name="IsSure">True when a name other than the one the seed goes by is said to be meant.</param>
public sealed record NameAsserted(string? Code, string? Species, string? Variety, ClaimGrounds Grounds, Guid? ById = null, bool IsSure = false);

/// <summary>Writes a name claim beside those that stand already. None is ever erased.</summary>
public sealed class ClaimName(SeedLedger ledger)
{
    public const string FromDeterminationCode = "naming.from-determination";
    public const string PacketCode = "naming.packet";
    public const string OtherNameCode = "naming.other-name";

    public Task<Outcome<ClaimId>> RunAsync(Actor actor, NameAsserted name, CancellationToken stop) =>
        actor.IsLibrarian
            ? ledger.RecordAsync(actor, work => ClaimAsync(work, name), stop)
            : Task.FromResult<Outcome<ClaimId>>(PeopleRefusals.LibrariansOnly);

    private static async Task<Outcome<ClaimId>> ClaimAsync(SeedWork work, NameAsserted name)
    {
        if (name.Grounds == ClaimGrounds.DeskDetermination) return new Refusal(FromDeterminationCode, "A determination becomes a claim on the page of its case.");
        if (!(await work.StockAsync(name.Code)).TryGet(out var seed, out var noSeed)) return noSeed;
        if (work.State.Find(new PacketId(seed.Node.Value)) is not null) return new Refusal(PacketCode, "A name is claimed for a lot or an accession. Give the code of the packet's lot.");

        var by = name.Grounds == ClaimGrounds.LabelOnly ? (PersonId?)null : name.ById is { } named ? new PersonId(named) : work.Person;
        var claim = new Named(work.Ids.Next<ClaimId>(), seed.Node, Blank(name.Species), Blank(name.Variety), name.Grounds, by, work.Today, null);
        if (!NamingRules.Claim(claim, seed.Began, new HashSet<NodeId>(), work.Today).TryGet(out var allowed, out var no)) return no;

        if (!name.IsSure && await DoubtAsync(work, seed.Node, allowed) is { } doubt) return doubt;

        work.Append(allowed);
        return allowed.Claim;
    }

    // The newest of the strongest claims is shown everywhere, so a slip of the pen would rename the seed.
    private static async Task<Refusal?> DoubtAsync(SeedWork work, NodeId node, Named claim)
    {
        var stands = (await LineageNames.OfAsync(work.Db, [node.Value], work.Stop))[node.Value];
        if (stands.Variety is { } name && claim.Variety is { } other && !string.Equals(name, other, StringComparison.OrdinalIgnoreCase))
            return new(OtherNameCode, $"This seed goes by ‘{name}’, and ‘{other}’ may be shown in its place. Check the spelling. If it is meant, it stands beside the other.") { MayInsist = true };
        if (stands.Species is { } species && claim.Species is { } another && species != another)
            return new(OtherNameCode, "This seed is on record as another species. Check the choice. If it is meant, it stands beside the other.") { MayInsist = true };
        if ((claim.Variety ?? stands.Variety) is not { } variety || (claim.Species ?? stands.Species) is not { } of) return null;
        var normalized = variety.Trim().ToUpperInvariant();
        var records = await work.Db.Set<VarietyRow>().Where(row => row.NormalizedName == normalized).Select(row => row.Species).ToListAsync(work.Stop);
        return records.Count > 0 && !records.Contains(of)
            ? new(OtherNameCode, $"Under Varieties, ‘{variety}’ is of another species. Check both. If it is meant, it stands beside the other.") { MayInsist = true }
            : null;
    }

    private static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
