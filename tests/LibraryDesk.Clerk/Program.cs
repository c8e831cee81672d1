using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.TestServers;
using Microsoft.Extensions.DependencyInjection;

// A server's worth of clerks, for tests that kill it: receives seed, puts it up and lends it without end, several at once, and says each
// time what was acknowledged, one line a thing. Arguments: sqlite or postgres, the connection string, how many clerks.
await using var server = TestLibrary.ServerOn(args[0], args[1]);
var librarian = Actor.Librarian(new Guid("11111111-1111-1111-1111-111111111111"));
await Task.WhenAll(Enumerable.Range(0, int.Parse(args[2], System.Globalization.CultureInfo.InvariantCulture)).Select(clerk => Task.Run(() => WorkAsync(clerk))));

async Task WorkAsync(int clerk)
{
    for (var turn = 0; ; turn++)
    {
        var offer = new SeedOffer(new DonorEntry(null, $"Donor {clerk}"), SeedSource.Donor, "capsicum-annuum", $"Name {clerk} {turn}", Quantity.OfSeeds(100));
        var received = (await server.GetRequiredService<ReceiveAccession>().RunAsync(librarian, offer, default)).Match(done => done, no => throw new InvalidOperationException(no.Message));
        Say("accession", received.Accession.ToString());
        Say("lot", received.Lot.ToString()!);
        var packed = (await server.GetRequiredService<PutUpPackets>().RunAsync(librarian, received.Lot.ToString(), 2, Quantity.OfSeeds(20), null, null, default)).Match(done => done, no => throw new InvalidOperationException(no.Message));
        foreach (var code in packed.Codes) Say("packet", code.ToString());
        var lent = (await server.GetRequiredService<LendPacket>().RunAsync(librarian, new Handover(packed.Codes[0].ToString()), default)).Match(done => done, no => throw new InvalidOperationException(no.Message));
        Say("lent", lent.PacketCode);
    }
}

static void Say(string what, string code)
{
    lock (Console.Out)
    {
        Console.Out.WriteLine($"{what} {code}");
        Console.Out.Flush();
    }
}
