using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Editing;
using LibraryDesk.TestServers;
using Microsoft.AspNetCore.Identity;

namespace LibraryDesk.Desk.Tests.Guides;

/// <summary>Guides are read in the reader's language, and kept and sent as they were written.</summary>
public class GuideLanguageTests
{
    [Theory, OnBoth]
    public async Task The_shelf_gives_each_reader_their_language(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        var shelf = library.Act<GuideShelf>();
        var written = (await shelf.CurrentAsync("capsicum", default))!;
        using (Languages.Speak("es"))
        {
            var spanish = (await shelf.CurrentAsync("capsicum", default))!;
            Assert.Equal("Pimientos y chiles", spanish.Guide.Crop);
            Assert.Same(spanish, await shelf.GetAsync("capsicum", written.Guide.Version, default));
            Assert.Same(written, await shelf.CurrentAsWrittenAsync("capsicum", default));
        }
        Assert.Equal("Peppers", (await shelf.CurrentAsync("capsicum", default))!.Guide.Crop);
    }

    [Theory, OnBoth]
    public async Task What_a_Spanish_desk_asks_and_determines_is_kept_as_written(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        using var _ = Languages.Speak("es");
        Assert.Null((await scene.Library.Act<AskForLook>().RunAsync(scene.Wren, scene.CaseId, new LookWanted("seed_colour", null, null), default)).Refusal);
        foreach (var volunteer in new[] { scene.Wren, scene.Tam, scene.Ivo }) await scene.GiveAsync(volunteer, ReviewScene.Pubescens);

        Assert.Equal("What colour is a dry seed from a ripe fruit?", Assert.Single(await scene.RowsAsync<LookRequestRow>()).Message);
        var determined = Assert.Single(await scene.RowsAsync<DeterminationRow>());
        Assert.Equal(ReviewScene.Pubescens, determined.Taxon);
        Assert.Contains(OddsThen.FromJson(determined.OddsJson)!.Candidates, c => c is { Id: "something-else", Name: "Something else" });
        Assert.All(await scene.RowsAsync<CaseEventRow>(), line => Assert.DoesNotContain("semilla", line.Detail ?? "", StringComparison.Ordinal));
        // The volunteer who reads it has it in Spanish.
        Assert.Equal("Pimientos y chiles", (await scene.ReadAsync(scene.Wren)).Guide.Guide.Crop);
    }

    [Theory, OnBoth]
    public async Task The_guide_s_own_question_reaches_a_member_in_their_language(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await using (var db = await scene.Library.OpenAsync())
        {
            db.Add(new IdentityUserClaim<Guid> { UserId = scene.Owner.UserId!.Value, ClaimType = Languages.ClaimType, ClaimValue = "es" });
            await db.SaveChangesAsync();
        }
        Assert.Null((await scene.Library.Act<AskForLook>().RunAsync(scene.Wren, scene.CaseId, new LookWanted("seed_colour", null, null), default)).Refusal);

        var letter = Assert.Single(await scene.RowsAsync<OutgoingMailRow>());
        Assert.Contains("¿De qué color es una semilla seca de un fruto maduro?", letter.Body, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_guide_edited_by_a_Spanish_librarian_stays_English_but_for_what_was_edited(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        var library = scene.Library;
        using var _ = Languages.Speak("es");
        await GuideScene.BeginAsync(library, scene.Librarian);
        var draft = await GuideScene.DraftAsync(library, scene.Librarian);
        Assert.Equal("Peppers", draft.Guide.Crop);
        var caution = draft.Guide.Cautions[0] with { Title = "Leave it off your tongue" };
        Assert.Null((await GuideScene.ChangeAsync(library, scene.Librarian, new PutCaution(caution))).Refusal);
        var row = await GuideScene.PublishAsync(library, scene.Librarian);

        Assert.Contains("\"crop\": \"Peppers\"", row.Json, StringComparison.Ordinal);
        var compared = ReviewScene.Value(await library.Act<ReadVersions>().CompareAsync(scene.Librarian, "capsicum", GuideScene.Shipped.Version, row.Version, default));
        Assert.False(compared.Difference.IsNone);
        var read = (await library.Act<GuideShelf>().CurrentAsync("capsicum", default))!.Guide;
        Assert.Equal("Leave it off your tongue", read.Cautions[0].Title);
        Assert.Equal("Pimientos y chiles", read.Crop);
    }
}
