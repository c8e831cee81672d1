using LibraryDesk.Data.Cases;
using LibraryDesk.Data.Mail;
using LibraryDesk.Data.Notices;
using LibraryDesk.Data.People;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Tests.Review;
using LibraryDesk.Desk.Tests.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.TestServers;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Tests.Notices;

/// <summary>Letters and notices speak the language of who reads them, whatever language the one who causes them works in.</summary>
public sealed class LetterLanguageTests
{
    [Theory, OnBoth]
    public async Task A_member_who_chose_Spanish_is_told_in_Spanish_by_a_volunteer_who_works_in_English(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await ChooseAsync(scene.Library, scene.Owner.UserId!.Value, "es");
        using (Languages.Speak("en"))
            ReviewScene.Value(await scene.Library.Act<AskForLook>().RunAsync(scene.Wren, scene.CaseId, new LookWanted(null, null, "Its leaf from below."), default));

        var letter = (await scene.RowsAsync<OutgoingMailRow>()).Single();
        Assert.Equal($"Una observación más, por favor: caso {scene.CaseId}", letter.Subject);
        Assert.Contains("No hay prisa", letter.Body, StringComparison.Ordinal);
        Assert.Contains("Eliges qué correos te escribe la mesa: https://desk.example.org/account/notices", letter.Body, StringComparison.Ordinal);
        // What people typed stays as they typed it.
        Assert.Contains("Its leaf from below.", letter.Body, StringComparison.Ordinal);
        Assert.Equal(letter.Subject, (await scene.RowsAsync<NoticeRow>()).Single().Heading);
    }

    [Theory, OnBoth]
    public async Task What_a_volunteer_leaves_unsaid_is_asked_in_the_owners_language(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        await ChooseAsync(scene.Library, scene.Owner.UserId!.Value, "es");
        ReviewScene.Value(await scene.Library.Act<AskForLook>().RunAsync(scene.Wren, scene.CaseId, new LookWanted(null, "flowers", null), default));

        Assert.StartsWith("Una foto de esta parte, de cerca y nítida: ", (await scene.RowsAsync<LookRequestRow>()).Single().Message, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task Who_chose_nothing_is_told_in_English_by_a_volunteer_who_works_in_Spanish(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database, opinionsNeeded: 1);
        using (Languages.Speak("es")) await scene.GiveAsync(scene.Wren, ReviewScene.Annuum);

        Assert.Equal($"Case {scene.CaseId} is determined", (await scene.RowsAsync<OutgoingMailRow>()).Single().Subject);
    }

    [Theory, OnBoth]
    public async Task A_guest_is_written_to_in_the_language_they_filed_in(string database)
    {
        await using var scene = await ReviewScene.OpenAsync(database);
        StartedCase started;
        using (Languages.Speak("es"))
            started = ReviewScene.Value(await scene.Library.Act<StartCase>().StartAsync(Actor.Visitor, new NewCase("capsicum", "Del trueque", Specimen.Plant, 1, "guest@example.org", false, "https://desk.example.org"), default));
        var id = started.CaseIds[0];
        await using (var db = await scene.Library.OpenAsync())
            await db.Set<CaseRow>().Where(c => c.Id == id).ExecuteUpdateAsync(c => c.SetProperty(x => x.State, CaseState.Open).SetProperty(x => x.FiledAt, scene.Library.Clock.GetUtcNow()));
        using (Languages.Speak("en"))
            ReviewScene.Value(await scene.Library.Act<AskForLook>().RunAsync(scene.Wren, id, new LookWanted(null, null, "Its leaf from below."), default));

        var letters = (await scene.RowsAsync<OutgoingMailRow>()).OrderBy(m => m.Id).ToList();
        Assert.Equal([$"Tu caso {id} en Quillbrook", $"Una observación más, por favor: caso {id}"], letters.Select(m => m.Subject));
        Assert.Contains($"https://desk.example.org/c/{started.GuestKey}", letters[0].Body, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task A_recall_reaches_each_holder_in_their_own_language(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using (var db = await library.OpenAsync())
        {
            db.Add(new DeskUser { Id = ASeedLibrary.Member.UserId!.Value, UserName = "m@example.org", NormalizedUserName = "M@EXAMPLE.ORG", Email = "m@example.org", SecurityStamp = "s" });
            await db.SaveChangesAsync();
        }
        await ChooseAsync(library, ASeedLibrary.Member.UserId!.Value, "es");
        var code = await library.LentPacketAsync();
        var hold = (await library.Act<RecallSeed>().RunAsync(ASeedLibrary.Librarian, code, "round fruit came up", default)).Allowed().Hold.Value;
        (await library.Act<TellHolders>().RunAsync(ASeedLibrary.Librarian, hold, default)).Allowed();

        await using var after = await library.OpenAsync();
        var letter = await after.Set<OutgoingMailRow>().SingleAsync();
        Assert.Equal($"Retirada: sobre {code}", letter.Subject);
        Assert.Contains("Por qué: round fruit came up", letter.Body, StringComparison.Ordinal);
        Assert.Contains("No comas frutos", letter.Body, StringComparison.Ordinal);
    }

    [Theory, OnBoth]
    public async Task An_account_made_in_Spanish_gets_its_letters_in_Spanish(string database)
    {
        await using var library = await TestLibrary.CreateAsync(database);
        await using var scope = library.Services.CreateAsyncScope();
        using (Languages.Speak("es"))
            Assert.Null((await scope.ServiceProvider.GetRequiredService<Accounts>().MakeAsync("s@example.org", "Sol", "a long enough password", DeskRoles.Member)).Refusal);
        using (Languages.Speak("en"))
            await scope.ServiceProvider.GetRequiredService<PasswordReset>().AskAsync("s@example.org", (_, _) => "https://x/", default);

        await using var db = await library.OpenAsync();
        Assert.Equal("Pon una contraseña nueva", (await db.Set<OutgoingMailRow>().SingleAsync()).Subject);
    }

    private static async Task ChooseAsync(TestLibrary library, Guid person, string language)
    {
        await using var db = await library.OpenAsync();
        db.Add(new IdentityUserClaim<Guid> { UserId = person, ClaimType = Languages.ClaimType, ClaimValue = language });
        await db.SaveChangesAsync();
    }
}
