using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Identification.Record;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Shared.Odds;
using Microsoft.AspNetCore.Components;
using static LibraryDesk.Web.Features.Packets.PacketsText;

namespace LibraryDesk.Web.Features.Packets;

/// <summary>What a scan opens: the packet's name, how sure it is, where it comes from, how to grow it for seed. No people.</summary>
public sealed partial class PacketPage
{
    private Actor _actor = Actor.Visitor;
    private PacketView? _view;
    private LineageStory? _story;
    private Loan? _mine;
    private MemberLoan? _out;
    private Refusal? _no;
    private IReadOnlyList<FormFault> _faults = [];

    /// <summary>The packet's code.</summary>
    [Parameter, EditorRequired] public required string Code { get; set; }

    [CascadingParameter] private HttpContext? Http { get; set; }

    private IReadOnlyList<Fact> Facts
    {
        get
        {
            var facts = new List<Fact>
            {
                new(Say["This packet"], SeedWords.Amount(_view!.Packet.Held, _view.Lot.ThousandSeedMilligrams)),
                new(Say["Put up"], SeedWords.Day(_view.Packet.PackedOn)),
            };
            var tests = _view.Lineage.Tests.Where(test => test.Lot == _view.Lot.Id && !test.IsVoid).OrderBy(test => test.ReadOn).ToArray();
            facts.Add(new(Say["Germination"], tests.Length == 0
                ? Say["Not tested"]
                : Say[$"{tests[^1].Germinated} of {tests[^1].Sown}, {tests[^1].ReadOn:MMMM yyyy}"]));
            if (tests.Length > 0)
            {
                var (low, high) = BinomialInterval.Exact(tests[^1].Germinated, tests[^1].Sown);
                facts.Add(new(Say["Likely between"], Say[$"{100 * low:0} and {100 * high:0} in 100 (exact 95 % interval)"]));
            }
            return facts;
        }
    }

    protected override async Task OnParametersSetAsync()
    {
        _actor = await Current.GetAsync();
        if (!(await Show.ReadAsync(_actor, Code, default)).TryGet(out _view, out _no))
        {
            if (Http is { Response.HasStarted: false }) Http.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }
        _mine = _view.MyLoan;
        _story = new LineageStory(_view.Lineage, _view.Names, _view.Packet.Id.Node, _view.Plants);
        if (_actor.IsLibrarian && _view.Packet.Standing == PacketStanding.Lent) (await Loans.OpenOfPacketAsync(_actor, _view.Packet.Code.ToString(), default)).TryGet(out _out, out _);
    }

    private async Task BorrowAsync()
    {
        var outcome = await Lend.RunAsync(_actor, new Handover(_view!.Packet.Code.ToString()), default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo($"/p/{_view.Packet.Code}");
        else _faults = [new(null, no)];
    }

    private async Task AnswerAsync(RecallAnswer answer)
    {
        var outcome = await Recalls.AnswerAsync(_actor, _view!.Recall!.HoldId, _view.Packet.Code.ToString(), answer, default);
        if (outcome.TryGet(out _, out var no)) Navigation.NavigateTo($"/p/{_view.Packet.Code}");
        else _faults = [new(null, no)];
    }
}
