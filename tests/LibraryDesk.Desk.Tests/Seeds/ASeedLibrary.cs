using LibraryDesk.Data.People;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>Short words for what tests of seed do again and again.</summary>
internal static class ASeedLibrary
{
    public const string Species = "capsicum-annuum";

    public static Actor Librarian { get; } = Actor.Librarian(new Guid("11111111-1111-1111-1111-111111111111"));

    public static Actor Member { get; } = Actor.Member(new Guid("22222222-2222-2222-2222-222222222222"));

    public static Actor OtherMember { get; } = Actor.Member(new Guid("33333333-3333-3333-3333-333333333333"));

    public static T Allowed<T>(this Outcome<T> outcome)
        where T : notnull => outcome.Match(value => value, refusal => throw new InvalidOperationException($"{refusal.Code}: {refusal.Message}"));

    public static async Task<AccessionReceived> ReceiveAsync(this TestLibrary library, string name = "Millrace Red", long seeds = 500, string? species = Species) =>
        (await library.Act<ReceiveAccession>().RunAsync(
            Librarian, new SeedOffer(new DonorEntry(null, "A donor"), SeedSource.Donor, species, name, Quantity.OfSeeds(seeds), 6500, 2025), default)).Allowed();

    public static async Task<IReadOnlyList<string>> PacketsAsync(this TestLibrary library, string lot, int count = 1, long seeds = 20) =>
        [.. (await library.Act<PutUpPackets>().RunAsync(Librarian, lot, count, Quantity.OfSeeds(seeds), null, null, default)).Allowed().Codes.Select(code => code.ToString())];

    public static async Task<string> LentPacketAsync(this TestLibrary library)
    {
        var lot = (await library.ReceiveAsync()).Lot.ToString()!;
        var code = (await library.PacketsAsync(lot)).Single();
        (await library.Act<LendPacket>().RunAsync(Member, new Handover(code), default)).Allowed();
        return code;
    }

    /// <summary>An account with an address, so that letters reach them.</summary>
    public static async Task AddPersonAsync(this TestLibrary library, Actor actor, string email)
    {
        await using var db = await library.OpenAsync();
        db.Add(new DeskUser { Id = actor.UserId!.Value, UserName = email, NormalizedUserName = email.ToUpperInvariant(), Email = email, NormalizedEmail = email.ToUpperInvariant(), DisplayName = "A member", SecurityStamp = "s" });
        await db.SaveChangesAsync();
    }

    public static GrowOutFacts Facts(int grown = 12, int savedFrom = 10) =>
        new(grown, savedFrom, 1, 1, Isolation.Distance, 40, true, HarvestManner.Bulked);
}
