using System.Text.Json;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Seeds;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Demo;

/// <summary>Plays the steps of the demo's cases, each through the act that the screens use.</summary>
internal sealed class DemoCases(
    IServiceProvider acts, DemoCast cast, DemoSeeds seeds, IReadOnlyDictionary<string, JsonElement> cases, IReadOnlyDictionary<DemoStep, DemoPhoto[]> photos)
{
    private const string Guide = "capsicum";
    private const string Site = "http://localhost";

    private readonly Dictionary<string, Filed> _filed = new(StringComparer.Ordinal);

    private sealed record Filed(IReadOnlyList<long> Ids, Actor Owner);

    public Task PlayAsync(DemoStep step, CancellationToken stop) => step.Do switch
    {
        "draft" => StartAsync(step, stop),
        "file" => FileAsync(step, stop),
        "answer" => AnswerAsync(step, Case(step).Ids[step.Number("plant") - 1], stop),
        "look" => LookAsync(step, stop),
        "score" => ScoreAsync(step, stop),
        "origin" => OriginAsync(step, Case(step).Ids[0], step.Fields, stop),
        "suggest" => SuggestAsync(step, stop),
        "opinion" => SealAsync(step, stop),
        "review" => ReviewAsync(step, stop),
        "ask-look" => AskAsync(step, stop),
        "determine" => DetermineAsync(step, stop),
        "claim" => ClaimAsync(step, stop),
        "close" => CloseAsync(step, stop),
        "reopen" => ReopenAsync(step, stop),
        _ => throw step.Wrong("this step is not known"),
    };

    private T Act<T>() where T : notnull => acts.GetRequiredService<T>();

    private Filed Case(DemoStep step) =>
        _filed.TryGetValue(step.Case!, out var filed) ? filed : throw step.Wrong("the case has not begun yet");

    private Actor By(DemoStep step) => step.By is null ? Case(step).Owner : cast.Actor(step, step.By);

    private static NamedTaxon Taxon(DemoStep step) => new(step.Text("taxon"), step.TextOrNull("qualifier") ?? Qualifiers.None);

    private string? Packet(DemoStep step, JsonElement fields) =>
        fields.TryGetProperty("packet", out var handle) ? seeds.Code(step, handle.GetString()!) : null;

    private async Task StartAsync(DemoStep step, CancellationToken stop)
    {
        var about = cases[step.Case!];
        var guest = about.TryGetProperty("guest", out var email) ? email.GetString() : null;
        var walkIn = guest is not null && step.By is not null;
        var starter = step.By is not null ? cast.Actor(step, step.By)
            : guest is not null ? Actor.Visitor
            : cast.Actor(step, about.GetProperty("owner").GetString());
        var started = step.Must(await Act<StartCase>().StartAsync(starter, new NewCase(
            Guide, about.GetProperty("title").GetString()!, step.Word("specimen", Specimen.Plant), step.NumberOrNull("plants") ?? 1, guest, walkIn, Site), stop));
        var owner = guest is not null && !walkIn ? Actor.Guest(started.GuestKey!) : starter;
        _filed.Add(step.Case!, new Filed(started.CaseIds, owner));
        foreach (var id in started.CaseIds)
        {
            await SeeAsync(step, owner, id, stop);
            foreach (var clue in step.Each("origin")) await OriginAsync(step, id, clue, stop);
        }
    }

    private async Task FileAsync(DemoStep step, CancellationToken stop)
    {
        if (!_filed.ContainsKey(step.Case!)) await StartAsync(step, stop);
        foreach (var id in Case(step).Ids) step.Must(await Act<FileCase>().FileAsync(Case(step).Owner, id, stop));
    }

    private async Task LookAsync(DemoStep step, CancellationToken stop)
    {
        var (ids, owner) = Case(step);
        step.Must(await Act<AddLook>().AddAsync(owner, ids[0], null, step.TextOrNull("note"), stop));
        await SeeAsync(step, owner, ids[0], stop);
    }

    // Parts, answers and pictures of one look.
    private async Task SeeAsync(DemoStep step, Actor owner, long id, CancellationToken stop)
    {
        string[] parts = [.. step.Each("parts").Select(part => part.GetString()!)];
        step.Must(await Act<SetParts>().SetAsync(owner, id, null, parts, stop));
        await AnswerAsync(step, id, stop);
        foreach (var photo in photos.GetValueOrDefault(step, []))
        {
            using var upload = new MemoryStream(photo.Jpeg, writable: false);
            step.Must(await Act<AddPhoto>().AddAsync(owner, id, null, new SentPhoto(photo.Shows, photo.Caption, IsDrawing: true), upload, stop));
        }
    }

    private async Task AnswerAsync(DemoStep step, long id, CancellationToken stop)
    {
        foreach (var answer in DemoAnswers.Of(step)) step.Must(await Act<SaveAnswer>().SaveAsync(Case(step).Owner, id, null, answer, stop));
    }

    private async Task ScoreAsync(DemoStep step, CancellationToken stop)
    {
        var id = Case(step).Ids[0];
        var number = step.Number("look");
        await using var db = await Act<IDbContextFactory<LibraryDbContext>>().CreateDbContextAsync(stop);
        var look = await db.Set<LookRow>().Where(row => row.CaseId == id && row.Number == number).Select(row => row.Id).SingleAsync(stop);
        foreach (var answer in DemoAnswers.Of(step)) step.Must(await Act<ScoreTrait>().RunAsync(By(step), id, look, answer, stop));
    }

    private async Task OriginAsync(DemoStep step, long id, JsonElement clue, CancellationToken stop) =>
        step.Must(await Act<AddOriginClue>().AddAsync(Case(step).Owner, id, new NewOriginClue(
            Enum.Parse<OriginKind>(clue.GetProperty("kind").GetString()!),
            Packet(step, clue),
            clue.TryGetProperty("seedsSown", out var sown) ? sown.GetInt32() : null,
            clue.TryGetProperty("note", out var note) ? note.GetString() : null), stop));

    private async Task SuggestAsync(DemoStep step, CancellationToken stop) =>
        step.Must(await Act<AddSuggestion>().RunAsync(By(step), Case(step).Ids[0], new SuggestionWritten(
            step.Text("taxon"), step.TextOrNull("form"), step.TextOrNull("variety"), step.Text("reason")), stop));

    private async Task SealAsync(DemoStep step, CancellationToken stop) =>
        step.Must(await Act<SealOpinion>().RunAsync(
            By(step), Case(step).Ids[0], new OpinionWritten(Taxon(step), step.NumberOrNull("inTwenty"), step.TextOrNull("note")), stop));

    private async Task ReviewAsync(DemoStep step, CancellationToken stop)
    {
        var (id, by) = (Case(step).Ids[0], By(step));
        await using var db = await Act<IDbContextFactory<LibraryDbContext>>().CreateDbContextAsync(stop);
        var shown = await db.Set<OpinionRow>().Where(row => row.CaseId == id && row.VolunteerId == by.UserId)
            .OrderByDescending(row => row.Round).Select(row => row.Revision).FirstAsync(stop);
        step.Must(await Act<FinishOpinion>().RunAsync(by, id, shown, Taxon(step), step.TextOrNull("note"), stop));
    }

    private async Task AskAsync(DemoStep step, CancellationToken stop) =>
        step.Must(await Act<AskForLook>().RunAsync(
            By(step), Case(step).Ids[0], new LookWanted(step.TextOrNull("trait"), step.TextOrNull("part"), step.TextOrNull("message")), stop));

    private async Task DetermineAsync(DemoStep step, CancellationToken stop) =>
        step.Must(await Act<DetermineAlone>().RunAsync(
            By(step), Case(step).Ids[0], new DeterminationAlone(Taxon(step), step.TextOrNull("variety"), Packet(step, step.Fields), step.Text("grounds")), stop));

    private async Task ClaimAsync(DemoStep step, CancellationToken stop) =>
        step.Must(await Act<ClaimFromDetermination>().RunAsync(By(step), Case(step).Ids[0], stop));

    private async Task CloseAsync(DemoStep step, CancellationToken stop) =>
        step.Must(await Act<CloseCase>().RunAsync(By(step), Case(step).Ids[0], step.Text("note"), stop));

    private async Task ReopenAsync(DemoStep step, CancellationToken stop) =>
        step.Must(await Act<ReopenCase>().RunAsync(By(step), Case(step).Ids[0], step.Text("reason"), stop));
}
