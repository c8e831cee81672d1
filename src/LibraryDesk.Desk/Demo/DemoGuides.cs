using LibraryDesk.Desk.Guides;
using LibraryDesk.Identification.Editing;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Desk.Demo;

/// <summary>Plays what the demo's librarians do with a crop guide, each through the act that the screens use.</summary>
internal sealed class DemoGuides(IServiceProvider acts, DemoCast cast)
{
    /// <summary>How the acts of this kind begin.</summary>
    public const string Prefix = "guide-";

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    public Task PlayAsync(DemoStep step, CancellationToken stop)
    {
        var (by, guide) = (cast.Actor(step, step.By), step.Text("guide"));
        return step.Do switch
        {
            "guide-draft" => DraftAsync(step, by, guide, stop),
            "guide-learn" => LearnAsync(step, by, guide, stop),
            "guide-hint" => HintAsync(step, by, guide, stop),
            "guide-publish" => PublishAsync(step, by, guide, stop),
            _ => throw step.Wrong("this act is not known"),
        };
    }

    private T Act<T>() where T : notnull => acts.GetRequiredService<T>();

    private async Task<DraftView> ReadAsync(DemoStep step, Actor by, string guide, CancellationToken stop) =>
        step.Must(await Act<ReadDraft>().RunAsync(by, guide, stop));

    private async Task DraftAsync(DemoStep step, Actor by, string guide, CancellationToken stop) =>
        step.Must(await Act<BeginDraft>().RunAsync(by, guide, null, stop));

    private async Task LearnAsync(DemoStep step, Actor by, string guide, CancellationToken stop) =>
        step.Must(await Act<ChangeDraft>().LearnAsync(by, guide, (await ReadAsync(step, by, guide, stop)).Revision, step.Flag("learns") ?? false, stop));

    private async Task HintAsync(DemoStep step, Actor by, string guide, CancellationToken stop)
    {
        var draft = await ReadAsync(step, by, guide, stop);
        var trait = draft.Guide.FindTrait(step.Text("trait")) ?? throw step.Wrong("the guide has no such trait");
        step.Must(await Act<ChangeDraft>().RunAsync(by, guide, draft.Revision, new PutTrait(trait with { Hint = step.Text("hint") }), stop));
    }

    private async Task PublishAsync(DemoStep step, Actor by, string guide, CancellationToken stop)
    {
        var started = step.Must(await Act<RerunCases>().StartAsync(by, guide, stop));
        await Act<RerunCases>().WaitAsync(started.Id, Patience, stop);
        step.Must(await Act<PublishGuide>().RunAsync(by, guide, started.Id, step.Text("note"), stop));
    }
}
