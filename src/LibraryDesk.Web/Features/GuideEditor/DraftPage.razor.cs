using LibraryDesk.Desk.Guides;
using LibraryDesk.Desk.People;
using LibraryDesk.Lineage;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.GuideEditor.GuideEditorText;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>The draft of a guide's next version: what changed, what is at fault, where to go on.</summary>
public sealed partial class DraftPage(ReadDraft read, ReadVersions versions, BeginDraft begin, ChangeDraft change, CurrentActor current, NavigationManager navigation)
{
    private Actor _actor = Actor.Visitor;
    private DraftView? _draft;
    private IReadOnlyList<VersionLine>? _versions;
    private IReadOnlyList<Choice> _choices = [];
    private string _crop = "";
    private IReadOnlyList<FormFault> _faults = [];

    /// <summary>The guide's id, such as capsicum.</summary>
    [Parameter] public string GuideId { get; set; } = "";

    [SupplyParameterFromQuery] private string? Done { get; set; }

    [SupplyParameterFromForm(FormName = "begin", Name = "From")] private string? From { get; set; }

    [SupplyParameterFromForm] private long Revision { get; set; }

    [SupplyParameterFromForm(FormName = "learn", Name = "Learns")] private bool Learns { get; set; }

    private string Path => $"/guides/{GuideId}/edit";

    private string? DoneWords => Done switch
    {
        "begun" => Say["The draft is begun. Choose below what to change."],
        "saved" => Say["Saved in the draft."],
        "undone" => Say["Undone."],
        "back" => Say["Put back."],
        "kept" => Say["Your choice is kept."],
        "carried" => Say["The changes stand on the version in use now."],
        "discarded" => Say["The draft is gone. The published versions are as they were."],
        _ => null,
    };

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        _actor = await current.GetAsync();
        if (!(await versions.OpenAsync(_actor, GuideId, null, default)).TryGet(out var opened, out _))
        {
            navigation.NotFound();
            return;
        }
        _crop = opened.Guide.Crop;
        (await read.RunAsync(_actor, GuideId, default)).TryGet(out _draft, out var no);
        if (no is { Code: not GuideRefusals.NoDraftCode }) _faults = [new FormFault(null, no)];
        _versions = (await versions.ListAsync(GuideId, default)).Match(list => list, _ => []);
        _choices = [.. _versions.Select(v => new Choice(v.Version, $"{v.Version}{(v.IsInUse ? Say[", in use"] : null)}{(v.IsOwn ? null : Say[", came with the desk"])}"))];
    }

    private async Task BeginAsync() => GoOn((await begin.RunAsync(_actor, GuideId, From, default)).Refusal, "begun");

    private async Task UndoAsync() => GoOn((await change.UndoAsync(_actor, GuideId, Revision, default)).Refusal, "undone", "#changes");

    private async Task RedoAsync() => GoOn((await change.PutBackAsync(_actor, GuideId, Revision, default)).Refusal, "back", "#changes");

    private async Task LearnAsync() => GoOn((await change.LearnAsync(_actor, GuideId, Revision, Learns, default)).Refusal, "kept");

    private async Task CarryAsync() => GoOn((await change.CarryOverAsync(_actor, GuideId, Revision, _draft?.CurrentVersion ?? "", default)).Refusal, "carried");

    private async Task DiscardAsync() => GoOn((await begin.DiscardAsync(_actor, GuideId, Revision, default)).Refusal, "discarded");

    private void GoOn(Refusal? no, string done, string anchor = "")
    {
        if (no is null) navigation.NavigateTo($"{Path}?done={done}{anchor}");
        else _faults = [new FormFault(null, no)];
    }

    private string By(DraftEdit edit) => edit.ById is { } id && _draft!.Names.GetValueOrDefault(id) is { Length: > 0 } name ? name : Say["a librarian"];
}
