using System.Globalization;
using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Demo;

/// <summary>Plays the demo's acts on seed, each through the act that the screens use. Codes are remembered under the handles of the files.</summary>
internal sealed class DemoSeeds(IServiceProvider acts, DemoCast cast)
{
    private readonly Dictionary<string, string> _codes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, long> _numbers = new(StringComparer.Ordinal);

    /// <summary>The code the library gave to what the files call <paramref name="handle"/>.</summary>
    public string Code(DemoStep step, string handle) =>
        _codes.TryGetValue(handle, out var code) ? code : throw step.Wrong($"nothing is called \"{handle}\" yet");

    public Task PlayAsync(DemoStep step, CancellationToken stop)
    {
        var by = cast.Actor(step, step.By);
        return step.Do switch
        {
            "accession" => AccessionAsync(step, by, stop),
            "transfer-in" => TransferInAsync(step, by, stop),
            "lot" => LotAsync(step, by, stop),
            "name" => NameAsync(step, by, stop),
            "pack" => PackAsync(step, by, stop),
            "germination" => GerminationAsync(step, by, stop),
            "request" => RequestAsync(step, by, stop),
            "pick" => PickAsync(step, by, stop),
            "lend" => LendAsync(step, by, stop),
            "grow-out" => GrowOutAsync(step, by, stop),
            "return" => ReturnAsync(step, by, stop),
            "end-loan" => EndLoanAsync(step, by, stop),
            "hold" => HoldAsync(step, by, stop),
            "release" => ReleaseAsync(step, by, stop),
            "recall" => RecallAsync(step, by, stop),
            "count" => CountAsync(step, by, stop),
            "move" => MoveAsync(step, by, stop),
            "transfer-out" => TransferOutAsync(step, by, stop),
            "discard" => DiscardAsync(step, by, stop),
            "variety" => VarietyAsync(step, by, stop),
            "told" => ToldAsync(step, by, stop),
            "answer-recall" => AnswerRecallAsync(step, by, stop),
            _ => throw step.Wrong("this act is not known"),
        };
    }

    private T Act<T>() where T : notnull => acts.GetRequiredService<T>();

    private string CodeOf(DemoStep step, string field) => Code(step, step.Text(field));

    private long NumberOf(DemoStep step, string key) =>
        _numbers.TryGetValue(key, out var number) ? number : throw step.Wrong($"nothing is on record for {key}");

    private static Quantity Seeds(DemoStep step) => Quantity.OfSeeds(step.Number("seeds"));

    private async Task AccessionAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var lot = step.TextOrNull("lot");
        var donor = step.TextOrNull("donor") is { } handle ? new DonorEntry(cast.Id(step, handle)) : null;
        var received = step.Must(await Act<ReceiveAccession>().RunAsync(by, new SeedOffer(
            donor, step.Word<SeedSource>("source"), step.TextOrNull("species"), step.TextOrNull("name"), Seeds(step),
            HarvestYear: step.NumberOrNull("harvestYear"), Place: step.TextOrNull("place"), MakesLot: lot is not null), stop));
        _codes.Add(step.Text("as"), received.Accession.ToString());
        if (lot is not null) _codes.Add(lot, received.Lot!.Value.ToString());
    }

    private async Task TransferInAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var code = step.Must(await Act<ReceiveTransfer>().RunAsync(by, new TransferOffer(
            step.Text("library"), step.Text("foreignCode"), null, step.TextOrNull("species"), step.TextOrNull("name"), Seeds(step)), stop));
        _codes.Add(step.Text("as"), code.ToString());
    }

    private async Task LotAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var parts = step.Each("from").Select(part => (Of: part.GetProperty("of").GetString()!, Seeds: Quantity.OfSeeds(part.GetProperty("seeds").GetInt64()))).ToList();
        var place = step.TextOrNull("place");
        var outcome = step.Text("how") switch
        {
            "Intake" => await Act<MakeLot>().FromAccessionAsync(by, Code(step, parts[0].Of), parts[0].Seeds, null, place, stop),
            "Harvest" => await Act<MakeLot>().FromHarvestAsync(by, NumberOf(step, parts[0].Of), parts[0].Seeds, null, place, stop),
            "Split" => await Act<SplitLot>().RunAsync(by, Code(step, parts[0].Of), parts[0].Seeds, null, place, stop),
            "Blend" => await Act<BlendLots>().RunAsync(by, [.. parts.Select(part => new BlendPart(Code(step, part.Of), part.Seeds))], null, place, isSure: true, stop),
            var how => throw step.Wrong($"a lot is not made by \"{how}\""),
        };
        _codes.Add(step.Text("as"), step.Must(outcome).ToString());
    }

    private async Task NameAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<ClaimName>().RunAsync(by, new NameAsserted(
            CodeOf(step, "of"), step.TextOrNull("species"), step.TextOrNull("variety"), step.Word<ClaimGrounds>("grounds"),
            step.TextOrNull("claimedBy") is { } who ? cast.Id(step, who) : null, IsSure: true), stop));

    private async Task PackAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var put = step.Must(await Act<PutUpPackets>().RunAsync(
            by, CodeOf(step, "lot"), step.Number("packets"), Quantity.OfSeeds(step.Number("seedsEach")), null, step.TextOrNull("place"), stop));
        for (var i = 0; i < put.Codes.Count; i++)
        {
            _codes.Add(string.Create(CultureInfo.InvariantCulture, $"{step.Text("as")}-{i + 1}"), put.Codes[i].ToString());
        }
    }

    private async Task GerminationAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<TestGermination>().RunAsync(
            by, CodeOf(step, "lot"), [new TestReplicate(step.Number("sown"), step.Number("germinated"))], null, step.NumberOrNull("days"), takeFromLot: true, isSure: true, stop));

    private async Task RequestAsync(DemoStep step, Actor by, CancellationToken stop) =>
        _numbers.Add(step.Text("as"), step.Must(await Act<RequestPacket>().RunAsync(by, CodeOf(step, "lot"), stop)).Value);

    private async Task PickAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var request = NumberOf(step, step.Text("request"));
        step.Must(await Act<PickPacket>().RunAsync(by, request, CodeOf(step, "packet"), stop));
        _numbers["picked " + step.Text("packet")] = request;
    }

    private async Task LendAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var packet = step.Text("packet");
        var request = _numbers.TryGetValue("picked " + packet, out var picked) ? picked : (long?)null;
        var lent = step.Must(await Act<LendPacket>().RunAsync(
            by, new Handover(Code(step, packet), cast.Id(step, step.Text("to")), DueOn: step.Day("due"), RequestId: request), stop));
        _numbers["loan " + packet] = lent.Loan.Value;
    }

    private async Task GrowOutAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var id = step.Must(await Act<RecordGrowOut>().RunAsync(by, new Sowing(CodeOf(step, "packet"), null, step.Day("sown"), Facts(step)), stop));
        _numbers.Add(step.Text("as"), id.Value);
    }

    private async Task ReturnAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var lot = step.TextOrNull("lot");
        var back = step.Must(await Act<ReturnSeed>().RunAsync(by, new SeedReturn(
            CodeOf(step, "packet"), step.Day("sown"), Facts(step), Seeds(step),
            StakeStayed: step.Flag("stakeStayed") ?? true, Place: step.TextOrNull("place"), MakesLot: lot is not null), stop));
        _numbers.Add(step.Text("as"), back.GrowOut.Value);
        if (lot is not null) _codes.Add(lot, back.Lot!.Value.ToString());
    }

    private static GrowOutFacts Facts(DemoStep step) => new(
        step.NumberOrNull("plants"), step.NumberOrNull("savedFrom"), step.NumberOrNull("offTypesSeen"), step.NumberOrNull("offTypesRemoved"),
        step.Word("isolation", Isolation.NotTold), step.NumberOrNull("nearestMetres"), step.Flag("othersInFlower"), step.Word("harvest", HarvestManner.NotTold));

    private async Task EndLoanAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<EndLoan>().RunAsync(by, NumberOf(step, "loan " + step.Text("packet")), step.Word<LoanEnding>("ending"), null, stop));

    private async Task HoldAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var hold = step.Must(await Act<HoldSeed>().RunAsync(by, CodeOf(step, "of"), step.Word<HoldReason>("reason"), stop));
        _numbers["hold " + step.Text("of")] = hold.Value;
    }

    private async Task ReleaseAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        if (!_numbers.TryGetValue("hold " + step.Text("of"), out var hold)) hold = await IntakeHoldAsync(step, stop);
        step.Must(await Act<ReleaseHold>().RunAsync(by, hold, step.Text("why"), stop));
    }

    // A hold that came by itself with handed-in seed has no handle; a librarian finds it on the lot's page.
    private async Task<long> IntakeHoldAsync(DemoStep step, CancellationToken stop)
    {
        await using var db = await Act<IDbContextFactory<LibraryDbContext>>().CreateDbContextAsync(stop);
        var code = CodeOf(step, "of");
        var hold = await db.Set<HoldRow>()
            .Where(row => row.ReleasedOn == null && db.Set<LotRow>().Any(lot => lot.Code == code && lot.Id == row.NodeId))
            .OrderBy(row => row.Id).FirstOrDefaultAsync(stop);
        return hold?.Id ?? throw step.Wrong("no hold stands on it");
    }

    private async Task RecallAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var recall = step.Must(await Act<RecallSeed>().RunAsync(by, CodeOf(step, "of"), step.Text("reason"), stop));
        _numbers["recall " + step.Text("of")] = recall.Hold.Value;
    }

    private async Task ToldAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var recall = NumberOf(step, "recall " + step.Text("recall"));
        foreach (var packet in step.Each("packets")) step.Must(await Act<RecallList>().ToldAsync(by, recall, Code(step, packet.GetString()!), stop));
    }

    private async Task AnswerRecallAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<RecallList>().AnswerAsync(
            by, NumberOf(step, "recall " + step.Text("recall")), CodeOf(step, "packet"), step.Word<RecallAnswer>("answer"), stop));

    private async Task VarietyAsync(DemoStep step, Actor by, CancellationToken stop)
    {
        var traits = step.Fields.GetProperty("traits").EnumerateObject()
            .SelectMany(trait => trait.Value.EnumerateArray().Select(state => (trait.Name, state.GetString()!)));
        step.Must(await Act<DescribeVariety>().RunAsync(by, new VarietyDescription(
            step.Text("name"), step.Text("species"), step.Word<BreedingStatus>("breeding"), [], step.Text("story"), [.. traits], step.TextOrNull("source")), null, stop));
    }

    private async Task CountAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<CountStock>().RunAsync(by, CodeOf(step, "of"), Seeds(step), null, step.Text("reason"), isSure: true, stop));

    private async Task MoveAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<MoveSeed>().RunAsync(by, CodeOf(step, "of"), step.Text("to"), stop));

    private async Task TransferOutAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<SendSeedOn>().RunAsync(by, CodeOf(step, "of"), null, step.Text("library"), stop));

    private async Task DiscardAsync(DemoStep step, Actor by, CancellationToken stop) =>
        step.Must(await Act<DiscardSeed>().RunAsync(by, CodeOf(step, "of"), Seeds(step), step.Text("reason"), stop));
}
