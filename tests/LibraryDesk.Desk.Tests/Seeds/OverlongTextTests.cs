using System.Reflection;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Seeds.Bulk;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Seeds;

/// <summary>Every text an act on seed takes is checked before it comes to the tables: PostgreSQL breaks on one letter too many, SQLite keeps it.</summary>
public class OverlongTextTests
{
    // One letter more than the widest text any of them may have, and than the narrowest.
    private static readonly int[] Lengths = [81, 161, 301, 1001, 5000];
    private static readonly Quantity Some = Quantity.OfSeeds(40);

    // In order of the acts. The lot has plenty, the packet is on the shelf, the loan is open, hold 1 stands.
    private static readonly Dictionary<string, Func<Seeded, string, Task<Refusal?>>> Texts = new()
    {
        ["BlendLots.place"] = async (seed, text) => (await seed.Act<BlendLots>().RunAsync(Librarian, [new(seed.Lot, Some), new(seed.OtherLot, Some)], null, text, isSure: true, default)).Refusal,
        ["ClaimName.Species"] = async (seed, text) => (await seed.Act<ClaimName>().RunAsync(Librarian, new(seed.Lot, text, null, ClaimGrounds.GrowersWord, IsSure: true), default)).Refusal,
        ["ClaimName.Variety"] = async (seed, text) => (await seed.Act<ClaimName>().RunAsync(Librarian, new(seed.Lot, null, text, ClaimGrounds.GrowersWord, IsSure: true), default)).Refusal,
        ["CloseRecall.why"] = async (seed, text) => (await seed.Act<CloseRecall>().RunAsync(Librarian, [await seed.RecallAsync()], text, false, true, default)).Refusal,
        ["CorrectEntry.why"] = async (seed, text) => (await seed.Act<CorrectEntry>().RunAsync(Librarian, seed.LastEntry, text, default)).Refusal,
        ["CountStock.reason"] = async (seed, text) => (await seed.Act<CountStock>().RunAsync(Librarian, seed.Lot, Some, null, text, isSure: true, default)).Refusal,
        ["DescribeVariety.Description"] = async (seed, text) => (await seed.Act<DescribeVariety>().RunAsync(Librarian, Variety("d" + text.Length) with { Description = text }, null, default)).Refusal,
        ["DescribeVariety.Name"] = async (seed, text) => (await seed.Act<DescribeVariety>().RunAsync(Librarian, Variety(text), null, default)).Refusal,
        ["DescribeVariety.Source"] = async (seed, text) => (await seed.Act<DescribeVariety>().RunAsync(Librarian, Variety("s" + text.Length) with { Source = text }, null, default)).Refusal,
        ["DescribeVariety.Species"] = async (seed, text) => (await seed.Act<DescribeVariety>().RunAsync(Librarian, Variety("a") with { Species = text }, null, default)).Refusal,
        ["DescribeVariety.Synonyms"] = async (seed, text) => (await seed.Act<DescribeVariety>().RunAsync(Librarian, Variety("o" + text.Length) with { Synonyms = [text, "b"] }, null, default)).Refusal,
        ["DiscardSeed.reason"] = async (seed, text) => (await seed.Act<DiscardSeed>().RunAsync(Librarian, seed.Lot, Quantity.OfSeeds(1), text, default)).Refusal,
        ["MakeLot.place"] = async (seed, text) => (await seed.Act<MakeLot>().FromAccessionAsync(Librarian, seed.Accession, Quantity.OfSeeds(1), null, text, default)).Refusal,
        ["MoveSeed.to"] = async (seed, text) => (await seed.Act<MoveSeed>().RunAsync(Librarian, seed.Lot, text, default)).Refusal,
        ["PutUpMany.place"] = async (seed, text) => (await seed.Act<PutUpMany>().RunAsync(Librarian, [new(seed.Lot, 1, Quantity.OfSeeds(1))], text, default)).Refusal,
        ["PutUpPackets.place"] = async (seed, text) => (await seed.Act<PutUpPackets>().RunAsync(Librarian, seed.Lot, 1, Quantity.OfSeeds(1), null, text, default)).Refusal,
        ["RecallSeed.why"] = async (seed, text) => (await seed.Act<RecallSeed>().RunAsync(Librarian, seed.FreshPacket(), text, default)).Refusal,
        ["ReceiveAccession.Contact"] = async (seed, text) => (await seed.Act<ReceiveAccession>().RunAsync(Librarian, Offer with { Donor = new(null, "A donor", text) }, default)).Refusal,
        ["ReceiveAccession.DeclaredName"] = async (seed, text) => (await seed.Act<ReceiveAccession>().RunAsync(Librarian, Offer with { DeclaredName = text }, default)).Refusal,
        ["ReceiveAccession.Name"] = async (seed, text) => (await seed.Act<ReceiveAccession>().RunAsync(Librarian, Offer with { Donor = new(null, text) }, default)).Refusal,
        ["ReceiveAccession.Place"] = async (seed, text) => (await seed.Act<ReceiveAccession>().RunAsync(Librarian, Offer with { Place = text }, default)).Refusal,
        ["ReceiveAccession.Species"] = async (seed, text) => (await seed.Act<ReceiveAccession>().RunAsync(Librarian, Offer with { Species = text }, default)).Refusal,
        ["ReceiveTransfer.DeclaredName"] = async (seed, text) => (await seed.Act<ReceiveTransfer>().RunAsync(Librarian, Transfer with { DeclaredName = text }, default)).Refusal,
        ["ReceiveTransfer.ForeignCode"] = async (seed, text) => (await seed.Act<ReceiveTransfer>().RunAsync(Librarian, Transfer with { ForeignCode = text }, default)).Refusal,
        ["ReceiveTransfer.ForeignHead"] = async (seed, text) => (await seed.Act<ReceiveTransfer>().RunAsync(Librarian, Transfer with { ForeignHead = text }, default)).Refusal,
        ["ReceiveTransfer.Library"] = async (seed, text) => (await seed.Act<ReceiveTransfer>().RunAsync(Librarian, Transfer with { Library = text }, default)).Refusal,
        ["ReceiveTransfer.Species"] = async (seed, text) => (await seed.Act<ReceiveTransfer>().RunAsync(Librarian, Transfer with { Species = text }, default)).Refusal,
        ["ReleaseHold.why"] = async (seed, text) => (await seed.Act<ReleaseHold>().RunAsync(Librarian, (await seed.Act<HoldSeed>().RunAsync(Librarian, seed.FreshPacket(), HoldReason.Health, default)).Allowed().Value, text, default)).Refusal,
        ["ReopenRecall.why"] = async (seed, text) => (await seed.Act<ReopenRecall>().RunAsync(Librarian, await seed.ClosedRecallAsync(), text, default)).Refusal,
        ["ReturnSeed.Place"] = async (seed, text) => (await seed.Act<ReturnSeed>().RunAsync(Librarian, new(seed.FreshPacket(), null, ASeedLibrary.Facts(), Some, Place: text), default)).Refusal,
        ["SendSeedOn.library"] = async (seed, text) => (await seed.Act<SendSeedOn>().RunAsync(Librarian, seed.Lot, Quantity.OfSeeds(1), text, default)).Refusal,
        ["SplitLot.place"] = async (seed, text) => (await seed.Act<SplitLot>().RunAsync(Librarian, seed.Lot, Quantity.OfSeeds(1), null, text, default)).Refusal,
    };

    private static Desk.People.Actor Librarian => ASeedLibrary.Librarian;

    private static SeedOffer Offer => new(new(null, "A donor"), SeedSource.Donor, ASeedLibrary.Species, "Millrace Red", Some);

    private static TransferOffer Transfer => new("Another library", "X-1", null, ASeedLibrary.Species, "Millrace Red", Some);

    [Theory, OnBoth]
    public async Task Text_of_any_length_is_written_or_refused_and_never_breaks_the_act(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var seed = await Seeded.InAsync(library);
        var accepted = new List<string>();
        foreach (var (name, act) in Texts)
        {
            foreach (var length in Lengths)
            {
                var no = await act(seed, new string('w', length));
                if (no is null && length == Lengths[^1]) accepted.Add(name);
            }
        }

        Assert.Empty(accepted);
    }

    [Fact]
    public void Every_text_of_every_act_on_seed_is_tried()
    {
        var acts = typeof(SeedLedger).Assembly.GetExportedTypes()
            .Where(type => type == typeof(DescribeVariety) || type.GetConstructors().Any(made => made.GetParameters().Any(given => given.ParameterType == typeof(SeedLedger))));
        var texts = acts.SelectMany(act => act.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .SelectMany(method => method.GetParameters().SelectMany(given => Named(given.Name!, given.ParameterType)).Select(text => $"{act.Name}.{text}")));
        Assert.Equal(Texts.Keys.Where(key => key != "ReceiveTransfer.ForeignCode").Order(StringComparer.Ordinal), texts.Distinct().Order(StringComparer.Ordinal));
    }

    // Codes are read, not kept; traits are looked up in the guide.
    private static IEnumerable<string> Named(string name, Type type)
    {
        if (name.EndsWith("code", StringComparison.OrdinalIgnoreCase) || name.EndsWith("codes", StringComparison.OrdinalIgnoreCase) || name == "Traits") return [];
        if (type == typeof(string)) return [name];
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)) return Named(name, type.GetGenericArguments()[0]);
        return type.Namespace?.StartsWith("LibraryDesk.Desk.Seeds", StringComparison.Ordinal) == true && type.GetMethod("<Clone>$") is not null
            ? type.GetProperties().SelectMany(property => Named(property.Name, property.PropertyType))
            : [];
    }

    private static VarietyDescription Variety(string name) => new(name, ASeedLibrary.Species, BreedingStatus.NotKnown, [], null, [], null);

    private sealed class Seeded(TestLibrary library, string accession, string lot, string otherLot, Queue<string> packets, long lastEntry)
    {
        public string Accession => accession;

        public string Lot => lot;

        public string OtherLot => otherLot;

        public long LastEntry => lastEntry;

        public static async Task<Seeded> InAsync(TestLibrary library)
        {
            var kept = (await library.Act<ReceiveAccession>().RunAsync(Librarian, Offer with { MakesLot = false }, default)).Allowed().Accession.ToString();
            var (one, other) = ((await library.ReceiveAsync(seeds: 5000)).Lot.ToString()!, (await library.ReceiveAsync(seeds: 5000)).Lot.ToString()!);
            var packets = await library.PacketsAsync(other, 40);
            await library.PacketsAsync(one);
            await using var db = await library.OpenAsync();
            return new(library, kept, one, other, new(packets), db.Set<LedgerHeadRow>().Single().Height);
        }

        public T Act<T>()
            where T : notnull => library.Act<T>();

        public string FreshPacket() => packets.Dequeue();

        public async Task<long> RecallAsync() => (await Act<RecallSeed>().RunAsync(Librarian, FreshPacket(), "mould", default)).Allowed().Hold.Value;

        public async Task<long> ClosedRecallAsync()
        {
            var hold = await RecallAsync();
            (await Act<CloseRecall>().RunAsync(Librarian, [hold], "all well", false, true, default)).Allowed();
            return hold;
        }
    }
}
