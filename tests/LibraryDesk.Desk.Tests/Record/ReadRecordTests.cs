using LibraryDesk.Desk.Record;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.TestServers;

namespace LibraryDesk.Desk.Tests.Record;

public sealed class ReadRecordTests
{
    [Theory, OnBoth]
    public async Task An_empty_desk_claims_nothing(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var record = await library.Act<ReadRecord>().RunAsync(default);
        Assert.Equal((0, 0, 0), (record.Filed, record.Determined, record.Judged));
        Assert.Null(record.Record);
        Assert.Null(record.Parts);
        Assert.Empty(record.Waits);
    }

    [Theory, OnBoth]
    public async Task A_case_named_unseen_is_judged_by_species_and_by_stage(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        var record = await scene.Library.Act<ReadRecord>().RunAsync(default);
        Assert.Equal(1, record.Judged);
        Assert.Equal("Capsicum annuum", Assert.Single(record.BySpecies).Name);
        // The look carried leaves and flowers.
        Assert.Equal("Flowering", Assert.Single(record.ByStage).Stage);
        var parts = record.Parts!;
        Assert.Equal(parts.Score, parts.Reliability - parts.Resolution + parts.Uncertainty, 12);
    }

    [Theory, OnBoth]
    public async Task A_case_that_a_librarian_determined_alone_proves_nothing(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        var alone = new LibraryDesk.Desk.Cases.Review.DeterminationAlone(new(ReviewScene.Annuum), null, null, "White flowers without spots, as in the key.");
        Assert.Null((await scene.Library.Act<LibraryDesk.Desk.Cases.Review.DetermineAlone>().RunAsync(scene.Librarian, scene.CaseId, alone, default)).Refusal);
        var record = await scene.Library.Act<ReadRecord>().RunAsync(default);
        Assert.Equal((1, 0), (record.Determined, record.Judged));
    }

    [Theory, OnBoth]
    public async Task Waiting_is_counted_from_filing_and_from_asking(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        scene.Library.Clock.Advance(TimeSpan.FromDays(2));
        await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);
        scene.Library.Clock.Advance(TimeSpan.FromDays(4));
        await scene.GiveAsync(scene.Tam, ReviewScene.Annuum);
        var waits = (await scene.Library.Act<ReadRecord>().RunAsync(default)).Waits;
        Assert.Equal(
            [new Wait(WaitStep.FirstOpinion, 1, 2, 2), new Wait(WaitStep.Determination, 1, 6, 6)],
            waits);
    }
}
