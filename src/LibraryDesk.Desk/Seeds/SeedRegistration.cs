using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Desk.Seeds.Bulk;
using LibraryDesk.Desk.Seeds.Keeping;
using LibraryDesk.Desk.Seeds.Ledger;
using LibraryDesk.Desk.Seeds.MixUps;
using LibraryDesk.Desk.Seeds.Population;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Seeds;

/// <summary>The acts on seed.</summary>
internal static class SeedRegistration
{
    public static IServiceCollection AddSeeds(this IServiceCollection services) => services
        .AddSingleton<SeedLedger>()
        .AddSingleton<VerifyLedger>()
        .AddSingleton<RebuildState>()
        .AddSingleton<LedgerCheckpoint>()
        .AddSingleton<CheckCheckpoint>()
        .AddSingleton<DescribeVariety>()
        .AddSingleton<ReceiveAccession>()
        .AddSingleton<ReceiveTransfer>()
        .AddSingleton<MakeLot>()
        .AddSingleton<SplitLot>()
        .AddSingleton<BlendLots>()
        .AddSingleton<PutUpPackets>()
        .AddSingleton<RequestPacket>()
        .AddSingleton<PickPacket>()
        .AddSingleton<LendPacket>()
        .AddSingleton<EndLoan>()
        .AddSingleton<RecordGrowOut>()
        .AddSingleton<ReturnSeed>()
        .AddSingleton<TestGermination>()
        .AddSingleton<ClaimName>()
        .AddSingleton<ClaimFromDetermination>()
        .AddSingleton<HoldSeed>()
        .AddSingleton<ReleaseHold>()
        .AddSingleton<RecallSeed>()
        .AddSingleton<CloseRecall>()
        .AddSingleton<ReopenRecall>()
        .AddSingleton<MoveSeed>()
        .AddSingleton<CountStock>()
        .AddSingleton<DiscardSeed>()
        .AddSingleton<SendSeedOn>()
        .AddSingleton<CorrectEntry>()
        .AddSingleton<MemberLoans>()
        .AddSingleton<ShowPacket>()
        .AddSingleton<ShowLot>()
        .AddSingleton<FindLots>()
        .AddSingleton<CounterDay>()
        .AddScoped<ReadBorrower>()
        .AddSingleton<ReadLabels>()
        .AddSingleton<TellHolders>()
        .AddSingleton<PreviewRecall>()
        .AddSingleton<TraceSeed>()
        .AddSingleton<RecallList>()
        .AddSingleton<WaitingRequests>()
        .AddSingleton<WithdrawRequest>()
        .AddSingleton<FindMixUp>()
        .AddSingleton<GrownBeside>()
        .AddSingleton<DueList>()
        .AddSingleton<DueCount>()
        .AddSingleton<FindAnything>()
        .AddSingleton<RebuildSearch>()
        .AddSingleton<EraseDonor>()
        .AddSingleton<CheckInBox>()
        .AddSingleton<PutUpMany>()
        .AddSingleton<ListDonors>();
}
