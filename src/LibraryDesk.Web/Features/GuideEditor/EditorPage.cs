using LibraryDesk.Desk.Guides;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Lineage;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Start;
using Microsoft.AspNetCore.Components;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>A page that changes the draft of a guide: it reads the draft, makes one change, and goes back to where it came from.</summary>
public abstract class EditorPage : ComponentBase
{
    /// <summary>The guide's id, such as capsicum.</summary>
    [Parameter] public string GuideId { get; set; } = "";

    [Inject] private ReadDraft Read { get; set; } = default!;

    [Inject] private ChangeDraft Change { get; set; } = default!;

    [Inject] private CurrentActor Current { get; set; } = default!;

    /// <summary>For going on after a change.</summary>
    [Inject] protected NavigationManager Navigation { get; set; } = default!;

    /// <summary>The draft; null while it is read, and where there is none.</summary>
    protected DraftView? Draft { get; private set; }

    /// <summary>Why there is none.</summary>
    protected Refusal? No { get; private set; }

    /// <summary>What needs a change before it can be saved.</summary>
    protected IReadOnlyList<FormFault> Faults { get; set; } = [];

    /// <summary>The page of the draft.</summary>
    protected string DraftPath => $"/guides/{GuideId}/edit";

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        (await Read.RunAsync(await Current.GetAsync(), GuideId, default)).TryGet(out var draft, out var no);
        (Draft, No) = (draft, no);
        if (draft is not null) Fill(draft);
    }

    /// <summary>Fills the form from the draft, unless it was posted.</summary>
    protected abstract void Fill(DraftView draft);

    /// <summary>Makes the change, or shows why not; what was typed stays.</summary>
    /// <param name="revision">What the form was shown with.</param>
    /// <param name="edit">The change.</param>
    /// <param name="backTo">Where to go on.</param>
    /// <returns>The revision to post next: the draft's own once the other librarian's change is on the screen.</returns>
    protected async Task<long> SaveAsync(long revision, GuideEdit edit, string backTo)
    {
        var outcome = await Change.RunAsync(await Current.GetAsync(), GuideId, revision, edit, default);
        if (outcome.Refusal is not { } no)
        {
            Navigation.NavigateTo(backTo);
            return revision;
        }
        Faults = [new FormFault(null, no)];
        return no.Code == GuideRefusals.ChangedMeanwhileCode ? Draft!.Revision : revision;
    }
}
